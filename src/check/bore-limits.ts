import type { AbandonedLimit, Bore, HoleType } from '../generated/layout.js';
import { COINCIDENT_REACH_MM } from './spacing-limits.js';

/** How far a hole must stay from a bore, as far as it is known, mm. */
export interface BoreLimit {
  /** The least that it can be, and the most that it is taken to be; they differ where the depth of the bore is not known. */
  least: number;
  most: number;
  source: string;
}

/** The distance that a hole type asks for to a bore; undefined where it asks for none. Lengths in millimetres. */
export function boreLimit(type: HoleType, bore: Bore, mostDepth: number): BoreLimit | undefined {
  if (bore.end === 'complete') {
    const { minSpacing } = type;
    return minSpacing && { least: minSpacing.value, most: minSpacing.value, source: minSpacing.source };
  }
  const { abandonedSpacing } = type;
  const limit = (bore.filled === undefined ? undefined : abandonedSpacing?.filled) ?? abandonedSpacing?.unfilled;
  if (abandonedSpacing === undefined || limit === undefined) return undefined;
  const { source } = abandonedSpacing;
  return { least: atDepth(limit, bore.depth ?? 0), most: atDepth(limit, bore.depth ?? mostDepth), source };
}

function atDepth({ value = 0, depthFactor = 0 }: AbandonedLimit, depth: number): number {
  return Math.max(value, depthFactor * depth);
}

/** What bores there are, as far as the distances that types ask for hang on it. */
export class BoreKinds {
  private hasComplete = false;
  /** The deepest one that is not complete; -1 where there is none. */
  private filled = -1;
  private unfilled = -1;

  /** @param unknownDepth what a depth that is not known is taken for */
  constructor(bores: readonly Bore[], unknownDepth: number) {
    for (const { end, filled, depth = unknownDepth } of bores) {
      if (end === 'complete') this.hasComplete = true;
      else if (filled === undefined) this.unfilled = Math.max(this.unfilled, depth);
      else this.filled = Math.max(this.filled, depth);
    }
  }

  /** Distance beyond which no bore can be too near to a hole of a type, mm. */
  reachOf(type: HoleType): number {
    const of = (bore: Pick<Bore, 'end' | 'depth' | 'filled'>) => boreLimit(type, bore as Bore, 0)?.least ?? 0;
    return Math.max(
      COINCIDENT_REACH_MM,
      this.hasComplete ? of({ end: 'complete' }) : 0,
      this.unfilled >= 0 ? of({ end: 'abandoned', depth: this.unfilled }) : 0,
      this.filled >= 0 ? of({ end: 'abandoned', depth: this.filled, filled: 'filled' }) : 0,
    );
  }
}
