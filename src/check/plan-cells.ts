/** A cell is wider than a place of control, so that what lies at one place is in a cell or in one of its neighbours. */
const CELL_MM = 2;

/** Something for each cell of 2 mm in plan, so that what lies near is found without looking at all. Millimetres. */
export class PlanCells<T> {
  private readonly cells = new Map<string, T>();

  /** What the cell of a position has; made where it has nothing yet. */
  at(x: number, y: number, make: () => T): T {
    const key = keyOf(cellOf(x), cellOf(y));
    const known = this.cells.get(key) ?? make();
    this.cells.set(key, known);
    return known;
  }

  /** What the cell of a position and its neighbours have: all that lies within 2 mm is in these. */
  around(x: number, y: number): T[] {
    const found: T[] = [];
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        const cell = this.cells.get(keyOf(cellOf(x) + dx, cellOf(y) + dy));
        if (cell !== undefined) found.push(cell);
      }
    }
    return found;
  }
}

/** Number of the cell, along an axis, that a coordinate lies in; neighbours differ by one. */
export function cellOf(coordinate: number): number {
  return Math.floor(coordinate / CELL_MM);
}

function keyOf(cellX: number, cellY: number): string {
  return `${cellX},${cellY}`;
}
