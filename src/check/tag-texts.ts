import type { Site } from './site.js';

/** Texts of tags that are read again: it takes time, and so many holes of one tag say what is to be said. */
const MOST_READ = 20_000;

/** The texts of the first tags, and comparisons of others with them, as many as are worth the time. */
export class TagTexts {
  private readonly firsts = new Map<number, string | undefined>();
  private read = 0;

  constructor(private readonly site: Site) {}

  /** Undefined when enough was read, or where nothing can be read. */
  areEqual(hole: number, first: number): boolean | undefined {
    if (this.read >= MOST_READ) return undefined;
    const text = this.text(hole);
    return text === undefined ? undefined : text === this.of(first);
  }

  /** The tag of a hole that others are compared with; kept. */
  of(first: number): string | undefined {
    const known = this.firsts.get(first) ?? this.text(first);
    this.firsts.set(first, known);
    return known;
  }

  private text(hole: number): string | undefined {
    this.read++;
    const part = this.site.partOf(hole);
    return part.tagOf?.(hole - part.firstHole);
  }
}
