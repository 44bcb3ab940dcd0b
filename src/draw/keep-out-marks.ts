import type { KeepOut, Point3 } from '../generated/layout.js';
import type { LegendEntry } from './legend.js';
import type { PlanView } from './plan-view.js';
import type { PlanWords } from './plan-words.js';
import type { Primitive, Spot, Style } from './primitive.js';
import type { ShapeBudget } from './shape-budget.js';
import type { Named } from './tag-labels.js';

type Kind = KeepOut['kind'];

/** Dashes of the kinds, so that they are told apart without colour. */
const DASHES: Readonly<Record<Kind, readonly number[] | undefined>> = {
  tendon: undefined,
  bar: [0.6, 0.8],
  conduit: [2.4, 0.9],
  'live-service': [3, 0.8, 0.5, 0.8, 0.5, 0.8],
  embed: undefined,
  other: [1.2, 1.2],
};
const LEAST_WIDTH_MM = 0.25;
/** Wider than any paper. */
const MOST_WIDTH_MM = 1000;
const BAND: Style = { stroke: 'ink', strokeOpacity: 0.13, isRound: true };

/** Keep-outs in plan, and where their names may stand. */
export interface KeepOutMarks {
  readonly primitives: readonly Primitive[];
  readonly names: readonly Named[];
}

/** What of the keep-outs has one look. */
interface Look {
  kind: Kind;
  /** Of the thing itself, mm of paper. */
  width: number;
  /** With standoff and position tolerance, mm of paper. */
  bandWidth: number;
  lines: Spot[][];
  rings: Spot[][];
}

/** Keep-outs as they are seen from above: the thing itself, and around it a band as wide as standoff and position tolerance. */
export function keepOutMarks(keepOuts: readonly KeepOut[], view: PlanView, budget: ShapeBudget): KeepOutMarks {
  const looks = new Map<string, Look>();
  const names: Named[] = [];
  for (const { kind, shape, standoff, positionTolerance = 0, name, id } of keepOuts) {
    const radius = shape.path?.radius ?? 0;
    const around = standoff + positionTolerance;
    const key = `${kind} ${radius} ${around} ${shape.path === undefined}`;
    const look = looks.get(key) ?? newLook(kind, radius, around, view);
    looks.set(key, look);
    const beyond = look.bandWidth / 2 + 1;
    const lines = shape.path === undefined ? [] : view.line(budget.take(shape.path.points), beyond);
    const rings = ringsOf(shape, budget)
      .map((ring) => view.ring(ring, beyond))
      .filter((ring) => ring.length > 0);
    look.lines.push(...lines);
    look.rings.push(...rings);
    const place = placeOnLine(lines) ?? placeOnRing(rings[0]);
    if (place !== undefined && view.holds(place.at)) names.push({ ...place, text: name ?? id });
  }
  const all = [...looks.values()];
  return { primitives: [...all.flatMap(bandOf), ...all.flatMap(thingOf)], names };
}

/** Legend of the kinds that there are. */
export function keepOutLegend(keepOuts: readonly KeepOut[], words: PlanWords): LegendEntry[] {
  if (keepOuts.length === 0) return [];
  const kinds = (Object.keys(DASHES) as Kind[]).filter((kind) => keepOuts.some((keepOut) => keepOut.kind === kind));
  const line = (style: Style): Primitive => ({ kind: 'line', from: [-4.5, 0], to: [4.5, 0], style });
  return [
    ...kinds.map((kind) => ({
      sample: [
        line({ ...BAND, strokeWidth: 2.4, isRound: false }),
        line({ stroke: 'ink', strokeWidth: 0.4, dash: DASHES[kind] }),
      ],
      text: words.keepOuts[kind],
    })),
    { sample: [line({ ...BAND, strokeWidth: 2.4, isRound: false })], text: words.standoff },
  ];
}

function newLook(kind: Kind, radius: number, around: number, { denominator }: PlanView): Look {
  const onPaper = (mm: number) => Math.min(mm / denominator, MOST_WIDTH_MM);
  const width = Math.max(onPaper(2 * radius), LEAST_WIDTH_MM);
  return { kind, width, bandWidth: onPaper(2 * (radius + around)), lines: [], rings: [] };
}

function bandOf({ bandWidth, lines, rings }: Look): Primitive[] {
  const style: Style = { ...BAND, strokeWidth: bandWidth };
  return [
    ...(lines.length === 0 ? [] : [{ kind: 'polyline', lines, style } as const]),
    ...(rings.length === 0 || bandWidth === 0 ? [] : [{ kind: 'polygon', rings, style } as const]),
  ];
}

function thingOf({ kind, width, lines, rings }: Look): Primitive[] {
  const stroke: Style = { stroke: 'ink', strokeOpacity: 0.8, dash: DASHES[kind] };
  return [
    ...(lines.length === 0 ? [] : [{ kind: 'polyline', lines, style: { ...stroke, strokeWidth: width } } as const]),
    ...(rings.length === 0
      ? []
      : [{ kind: 'polygon', rings, style: { ...stroke, strokeWidth: 0.3, fill: 'ink', fillOpacity: 0.3 } } as const]),
  ];
}

const CORNERS_OF_CIRCLE = 24;

/** Rings that together cover what a prism or ball is from above, all turning the same way. */
function ringsOf({ prism, sphere }: KeepOut['shape'], budget: ShapeBudget): (readonly Point3[])[] {
  if (sphere !== undefined) {
    const [x, y] = sphere.centre;
    const corner = (k: number): Point3 => {
      const angle = (2 * Math.PI * k) / CORNERS_OF_CIRCLE;
      return [x + sphere.radius * Math.cos(angle), y + sphere.radius * Math.sin(angle), 0];
    };
    return [budget.take(Array.from({ length: CORNERS_OF_CIRCLE }, (_, k) => corner(k)))];
  }
  if (prism === undefined) return [];
  const { base, extrude } = prism;
  const rings: (readonly Point3[])[] = [budget.take(base)];
  if (extrude[0] !== 0 || extrude[1] !== 0) {
    const moved = (point: Point3): Point3 => [point[0] + extrude[0], point[1] + extrude[1], 0];
    rings.push(budget.take(base.map(moved)));
    for (let k = 0, j = base.length - 1; k < base.length; j = k++) {
      rings.push(budget.take([base[j], base[k], moved(base[k]), moved(base[j])]));
    }
  }
  return rings.map((ring) => (turnsLeft(ring) ? ring : [...ring].reverse()));
}

function turnsLeft(ring: readonly Point3[]): boolean {
  let area = 0;
  for (let k = 0, j = ring.length - 1; k < ring.length; j = k++) {
    // From the first corner, so that far from the origin no digits are lost.
    const [ax, ay, bx, by] = [
      ring[j][0] - ring[0][0],
      ring[j][1] - ring[0][1],
      ring[k][0] - ring[0][0],
      ring[k][1] - ring[0][1],
    ];
    area += ax * by - ay * bx;
  }
  return area >= 0;
}

function placeOnRing(ring: readonly Spot[] | undefined): Omit<Named, 'text'> | undefined {
  if (ring === undefined) return undefined;
  const range = (axis: 0 | 1) => {
    const values = ring.map((spot) => spot[axis]);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    return { middle: (low + high) / 2, half: (high - low) / 2 };
  };
  const [x, y] = [range(0), range(1)];
  const direction: Spot = x.half >= y.half ? [1, 0] : [0, 1];
  return { at: [x.middle, y.middle], direction, reach: Math.max(x.half, y.half) };
}

/** The middle of the longest piece of lines. */
function placeOnLine(lines: readonly (readonly Spot[])[]): Omit<Named, 'text'> | undefined {
  let longest = 0;
  let place: Omit<Named, 'text'> | undefined;
  for (const line of lines) {
    for (let k = 1; k < line.length; k++) {
      const [from, to] = [line[k - 1], line[k]];
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      if (length <= longest) continue;
      longest = length;
      const direction: Spot = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
      place = { at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], direction, reach: length / 2 };
    }
  }
  return place;
}
