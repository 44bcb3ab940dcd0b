import type { PlanView } from '../../draw/plan-view.js';
import type { Circle, Primitive, Spot, Style } from '../../draw/primitive.js';
import type { OtherHole } from './other-layouts.js';
import type { SheetRow } from './sheet-row.js';

/** More holes of other trades than this are not drawn. */
const MOST_OTHERS = 1000;
const OTHER_RADIUS_MM = 1.1;
const OTHER_STYLE: Style = { stroke: 'ink', strokeWidth: 0.25, dash: [0.7, 0.5] };

/** Holes of other trades: broken rings without numbers. */
export function otherHoleMarks(holes: readonly OtherHole[], view: PlanView) {
  const trades = new Map<string, number>();
  const at: Spot[] = [];
  let leftOut = 0;
  for (const { x, y, trade } of holes) {
    const spot = view.spot(x, y);
    if (!view.holds(spot)) continue;
    if (at.length === MOST_OTHERS) {
      leftOut++;
      continue;
    }
    at.push(spot);
    trades.set(trade, (trades.get(trade) ?? 0) + 1);
  }
  const ring: Circle = { kind: 'circle', at: [0, 0], radius: OTHER_RADIUS_MM, style: OTHER_STYLE };
  const primitives: Primitive[] = at.length === 0 ? [] : [{ kind: 'marks', sign: [ring], at }];
  return { primitives, trades, leftOut };
}

/** A cross over the mark of each hole that is not to be drilled as it stands. */
export function closedMarks(rows: readonly SheetRow[], marks: readonly Spot[], signMm: number): Primitive[] {
  const at = marks.filter((_, k) => rows[k].findings?.state === 'error');
  const r = signMm * 0.8;
  const lines: Spot[][] = [
    [
      [-r, -r],
      [r, r],
    ],
    [
      [-r, r],
      [r, -r],
    ],
  ];
  if (at.length === 0) return [];
  return [{ kind: 'marks', sign: [{ kind: 'polyline', lines, style: { stroke: 'ink', strokeWidth: 0.5 } }], at }];
}
