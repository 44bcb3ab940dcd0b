import type { Bore } from '../generated/layout.js';
import type { LegendEntry } from './legend.js';
import type { PlanView } from './plan-view.js';
import type { PlanWords } from './plan-words.js';
import type { Circle, Polyline, Primitive, Spot, Style } from './primitive.js';

type End = Bore['end'];

const RADIUS_MM = 0.85;
const STYLE: Style = { stroke: 'ink', strokeWidth: 0.25 };
const ENDS: readonly End[] = ['complete', 'partial', 'abandoned'];
const MOST_BORES = 5000;

/** Existing bores in plan: a ring with a dot, with one stroke where it was not finished, with a cross where abandoned. */
export function boreMarks(bores: readonly Bore[], view: PlanView): readonly Primitive[] {
  return ENDS.flatMap((end): Primitive[] => {
    const places = new Map<string, Spot>();
    for (const bore of bores) {
      const at = view.spot(bore.point[0], bore.point[1]);
      if (bore.end !== end || !view.holds(at) || places.size === MOST_BORES) continue;
      places.set(`${at[0].toFixed(1)} ${at[1].toFixed(1)}`, at);
    }
    return places.size === 0 ? [] : [{ kind: 'marks', sign: signOf(end), at: [...places.values()] }];
  });
}

export function boreLegend(bores: readonly Bore[], words: PlanWords): LegendEntry[] {
  return ENDS.filter((end) => bores.some((bore) => bore.end === end)).map((end) => ({
    sample: signOf(end),
    text: words.bores[end],
  }));
}

function signOf(end: End): (Circle | Polyline)[] {
  const ring: Circle = { kind: 'circle', at: [0, 0], radius: RADIUS_MM, style: { ...STYLE, fill: 'paper' } };
  if (end === 'complete') return [ring, { kind: 'circle', at: [0, 0], radius: 0.3, style: { fill: 'ink' } }];
  const r = RADIUS_MM * Math.SQRT1_2;
  const strokes: Spot[][] = [
    [
      [-r, r],
      [r, -r],
    ],
    [
      [-r, -r],
      [r, r],
    ],
  ];
  return [ring, { kind: 'polyline', lines: end === 'partial' ? strokes.slice(0, 1) : strokes, style: STYLE }];
}
