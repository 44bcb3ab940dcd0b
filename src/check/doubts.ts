import type { LayoutModel } from '../model/layout-model.js';

/** What the rules of the stage frame have called in doubt, so that later stages do not build on it. */
export class Doubts {
  /** 1 for each hole of the site whose place off its face is in doubt; absent where there is none. */
  places: Uint8Array | undefined;
  /** Grows with each doubt. */
  count = 0;

  /** @param layouts whose unit or frame is in doubt; shared by all sites of a check */
  constructor(
    readonly layouts: Set<LayoutModel>,
    private readonly holeCount: number,
  ) {}

  doubtLayout(layout: LayoutModel): void {
    if (this.layouts.has(layout)) return;
    this.layouts.add(layout);
    this.count++;
  }

  /** @param i number of the hole among those of the site */
  doubtPlace(i: number): void {
    this.places ??= new Uint8Array(this.holeCount);
    this.places[i] = 1;
    this.count++;
  }
}
