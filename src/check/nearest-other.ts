/** For each hole of a site another one, the one that is worst by some distance; made only when there is one. */
export class NearestOther {
  private other: Int32Array | undefined;
  private distance = new Float64Array(0);

  constructor(private readonly holeCount: number) {}

  /** The other hole of hole `i`, or -1. */
  of(i: number): number {
    return this.other === undefined ? -1 : this.other[i];
  }

  /** Distance of that one, mm; Infinity where there is none. */
  distanceOf(i: number): number {
    return this.other === undefined ? Number.POSITIVE_INFINITY : this.distance[i];
  }

  /** Keeps another hole if it is nearer than the one before, or as near and earlier in the document. */
  keep(i: number, other: number, distance: number): void {
    const before = this.of(i);
    if (before >= 0 && (this.distance[i] < distance || (this.distance[i] === distance && before <= other))) return;
    this.set(i, other, distance);
  }

  set(i: number, other: number, distance: number): void {
    if (this.other === undefined) {
      this.other = new Int32Array(this.holeCount).fill(-1);
      this.distance = new Float64Array(this.holeCount).fill(Number.POSITIVE_INFINITY);
    }
    this.other[i] = other;
    this.distance[i] = distance;
  }

  /** Calls `visit` for each hole that has another one, in the order of the holes. */
  forEach(visit: (i: number, other: number, distance: number) => void): void {
    const { other, distance } = this;
    for (let i = 0; other !== undefined && i < other.length; i++) if (other[i] >= 0) visit(i, other[i], distance[i]);
  }

  /** Whether no hole has another one. */
  get isEmpty(): boolean {
    return this.other === undefined;
  }
}
