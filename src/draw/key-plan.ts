import { PlanBox } from '../geometry/plan-box.js';
import type { PlanLevel } from './plan-level.js';
import { type PaperBox, PlanView } from './plan-view.js';
import type { Primitive, Spot } from './primitive.js';

/** Outlines beyond these say nothing more about where the plan is. */
const MOST_OUTLINES = 300;
const MOST_POINTS = 4000;

/** The outlines of all levels of the building with those of this level filled and a frame around what the plan shows. */
export function keyPlan(
  { around, substrates }: PlanLevel,
  shown: PlanView['shown'],
  box: PaperBox,
): readonly Primitive[] {
  const all = new PlanBox();
  // Levels mostly have one outline.
  const unlike = new Map(around.map((ring) => [ring.map(([x, y]) => `${x} ${y}`).join(), ring]));
  const outlines = [...unlike.values()].slice(0, MOST_OUTLINES);
  for (const ring of outlines) for (const [x, y] of ring) all.add(x, y);
  if (all.xLow > all.xHigh) return [];
  const [width, height] = [box.right - box.left, box.bottom - box.top];
  const denominator = Math.max((all.xHigh - all.xLow) / width, (all.yHigh - all.yLow) / height, 1) * 1.04;
  const view = new PlanView(box, denominator, (all.xLow + all.xHigh) / 2, (all.yLow + all.yHigh) / 2);
  let points = 0;
  const fits = (ring: readonly Spot[]) => {
    points += ring.length;
    return ring.length > 0 && points <= MOST_POINTS;
  };
  const here = substrates
    .flatMap(({ outline }) => (outline === undefined ? [] : [view.ring(outline.points)]))
    .filter(fits);
  const rings = outlines.map((ring) => view.ring(ring)).filter(fits);
  const frame = view.ring(
    [
      [shown.xLow, shown.yLow],
      [shown.xHigh, shown.yLow],
      [shown.xHigh, shown.yHigh],
      [shown.xLow, shown.yHigh],
    ],
    0,
  );
  return [
    { kind: 'polygon', rings: here, style: { fill: 'ink', fillOpacity: 0.2 } },
    { kind: 'polygon', rings, style: { stroke: 'ink', strokeWidth: 0.2 } },
    ...(frame.length === 0
      ? []
      : [{ kind: 'polygon', rings: [frame], style: { stroke: 'ink', strokeWidth: 0.4 } } as const]),
  ];
}
