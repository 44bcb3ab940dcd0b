import type { Outline, Substrate } from '../generated/layout.js';
import type { Vec3 } from '../geometry/vector.js';
import type { LegendEntry } from './legend.js';
import type { PlanView } from './plan-view.js';
import type { PlanWords } from './plan-words.js';
import type { Primitive, Spot, Style } from './primitive.js';
import type { ShapeBudget } from './shape-budget.js';

type EdgeKind = NonNullable<Outline['edges']>[number];

/** Lines of edges, so that they are told apart without colour. */
const EDGE_STYLES: Readonly<Record<EdgeKind, Style>> = {
  continuous: { stroke: 'ink', strokeWidth: 0.2, strokeOpacity: 0.7 },
  opening: { stroke: 'ink', strokeWidth: 0.3 },
  free: { stroke: 'ink', strokeWidth: 0.55 },
  'construction-joint': { stroke: 'ink', strokeWidth: 0.35, dash: [4, 1, 0.7, 1] },
  'movement-joint': { stroke: 'ink', strokeWidth: 0.8, dash: [2, 1.1] },
};
const LEGEND_ORDER: readonly EdgeKind[] = ['free', 'opening', 'continuous', 'construction-joint', 'movement-joint'];
const ZONE_STYLE: Style = { stroke: 'ink', strokeWidth: 0.22, dash: [1.6, 1] };
const CROSS_STYLE: Style = { stroke: 'ink', strokeWidth: 0.15, strokeOpacity: 0.7 };
const WALL_STYLE: Style = { fill: 'ink', fillOpacity: 0.12 };
const FACE_STYLE: Style = { stroke: 'ink', strokeWidth: 0.6 };

/** A face is seen as a line where it leans by less than that. */
const UPRIGHT_SINE = Math.sin(Math.PI / 180);

/** Substrates in plan: outlines by kind of edge, openings with their diagonals, zones dashed, upright faces as lines. */
export function structureMarks(
  substrates: readonly Substrate[],
  view: PlanView,
  budget: ShapeBudget,
): readonly Primitive[] {
  const edges = new Map<EdgeKind, (readonly Spot[])[]>();
  const zones: (readonly Spot[])[] = [];
  const crosses: (readonly Spot[])[] = [];
  const walls: (readonly Spot[])[] = [];
  const faces: (readonly Spot[])[] = [];
  for (const substrate of substrates) {
    if (isUpright(substrate)) {
      const trace = traceOf(substrate);
      if (trace === undefined) continue;
      faces.push(...view.line(budget.take(trace.face)));
      walls.push(view.ring(trace.ring));
      continue;
    }
    for (const { outline } of substrate.zones ?? []) zones.push(...closedLine(view, budget.take(outline.points)));
    for (const opening of substrate.openings ?? []) {
      addEdges(edges, opening, view, budget);
      crosses.push(...diagonals(view, opening.points));
    }
    if (substrate.outline !== undefined) addEdges(edges, substrate.outline, view, budget);
  }
  const lines = (found: readonly (readonly Spot[])[], style: Style): Primitive[] =>
    found.length === 0 ? [] : [{ kind: 'polyline', lines: found, style }];
  return [
    ...(walls.length === 0 ? [] : [{ kind: 'polygon', rings: walls, style: WALL_STYLE } as const]),
    ...lines(crosses, CROSS_STYLE),
    ...lines(zones, ZONE_STYLE),
    ...kindsOf(EDGE_STYLES).flatMap((kind) => lines(edges.get(kind) ?? [], EDGE_STYLES[kind])),
    ...lines(faces, FACE_STYLE),
  ];
}

/** Legend of what the substrates have. */
export function structureLegend(substrates: readonly Substrate[], words: PlanWords): LegendEntry[] {
  const line = (text: string, style: Style): LegendEntry => ({
    sample: [{ kind: 'line', from: [-4.5, 0], to: [4.5, 0], style }],
    text,
  });
  const flat = substrates.filter((substrate) => !isUpright(substrate));
  const used = new Set(
    flat.flatMap(({ outline, openings = [] }) => [...kindsUsed(outline), ...openings.flatMap(openingKinds)]),
  );
  const entries = LEGEND_ORDER.filter((kind) => used.has(kind)).map((kind) =>
    line(words.edges[kind], EDGE_STYLES[kind]),
  );
  if (flat.some(({ openings = [] }) => openings.length > 0)) {
    const [l, t, r, b] = [-3, -1.6, 3, 1.6];
    const sample: Primitive[] = [
      {
        kind: 'polyline',
        lines: [
          [
            [l, t],
            [r, b],
          ],
          [
            [l, b],
            [r, t],
          ],
        ],
        style: CROSS_STYLE,
      },
      { kind: 'rect', at: [l, t], width: r - l, height: b - t, style: EDGE_STYLES.opening },
    ];
    entries.push({ sample, text: words.opening });
  }
  if (flat.some(({ zones = [] }) => zones.length > 0)) entries.push(line(words.zone, ZONE_STYLE));
  if (substrates.some((substrate) => isUpright(substrate) && substrate.outline !== undefined)) {
    const wall: Primitive = { kind: 'rect', at: [-4.5, 0], width: 9, height: 1.4, style: WALL_STYLE };
    entries.push({ sample: [wall, ...line('', FACE_STYLE).sample], text: words.uprightFace });
  }
  return entries;
}

function isUpright({ face }: Substrate): boolean {
  if (face === undefined) return false;
  const [x, y, z] = face.inward;
  const length = Math.hypot(x, y, z);
  return length > 0 && Math.abs(z) / length < UPRIGHT_SINE;
}

/** The line that an upright face is in plan, and the ring of the concrete behind it; undefined without an outline. */
function traceOf({ face, outline, thickness = 0 }: Substrate): { face: Vec3[]; ring: Vec3[] } | undefined {
  if (face === undefined || outline === undefined) return undefined;
  const length = Math.hypot(face.inward[0], face.inward[1]);
  const [nx, ny] = [face.inward[0] / length, face.inward[1] / length];
  const [px, py] = face.point;
  const [low, high] = outline.points.reduce(
    ([least, most], [x, y]) => {
      const along = (y - py) * nx - (x - px) * ny;
      return [Math.min(least, along), Math.max(most, along)];
    },
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
  const at = (along: number, inward: number): Vec3 => [px - along * ny + inward * nx, py + along * nx + inward * ny, 0];
  return {
    face: [at(low, 0), at(high, 0)],
    ring: [at(low, 0), at(high, 0), at(high, thickness), at(low, thickness)],
  };
}

/** Adds the edges of a ring to the lines of their kinds; neighbours of one kind become one line. */
function addEdges(lines: Map<EdgeKind, (readonly Spot[])[]>, ring: Outline, view: PlanView, budget: ShapeBudget): void {
  const points = budget.take(ring.points);
  let line: Vec3[] = [];
  for (let k = 0; k < points.length; k++) {
    const kind = edgeKind(ring, k);
    line.push(points[k]);
    if (k + 1 < points.length && edgeKind(ring, k + 1) === kind) continue;
    line.push(points[(k + 1) % points.length]);
    const known = lines.get(kind) ?? [];
    lines.set(kind, known);
    for (const piece of view.line(line)) known.push(piece);
    line = [];
  }
}

function edgeKind({ edges }: Outline, k: number): EdgeKind {
  return edges?.[k] ?? 'free';
}

function kindsUsed(ring: Outline | undefined): EdgeKind[] {
  return ring === undefined ? [] : [...new Set(ring.points.map((_, k) => edgeKind(ring, k)))];
}

/** The legend shows an opening whole; only other kinds of its edges need a line of their own. */
function openingKinds(ring: Outline): EdgeKind[] {
  return kindsUsed(ring).filter((kind) => kind !== 'opening');
}

function kindsOf(styles: typeof EDGE_STYLES): EdgeKind[] {
  return Object.keys(styles) as EdgeKind[];
}

/** The diagonals of a ring of four corners, the mark of an opening; nothing for others. */
function diagonals(view: PlanView, points: readonly Vec3[]): Spot[][] {
  if (points.length !== 4) return [];
  return [...view.line([points[0], points[2]]), ...view.line([points[1], points[3]])];
}

function closedLine(view: PlanView, points: readonly Vec3[]): Spot[][] {
  return points.length === 0 ? [] : view.line([...points, points[0]]);
}
