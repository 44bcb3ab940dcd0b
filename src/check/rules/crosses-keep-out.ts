import type { KeepOut } from '../../generated/layout.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Severity } from '../../model/observation.js';
import { judgeHoles } from '../judge-holes.js';
import type { OfKind } from '../judge-kinds.js';
import { distanceThatMatters, KeepOutIndex } from '../keep-out-index.js';
import { type KnownKeepOuts, keepOutsOf } from '../keep-outs-of.js';
import type { Kind } from '../kinds.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import type { Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { sweptDepthOf } from '../swept-holes-of.js';

/** Distances that are computed for each hole on the average, and for all in any case. */
const MOST_TESTS_OF_HOLE = 64;
const FEW_TESTS = 5_000_000;

const TOO_MANY: OfKind = { leftOut: 'too many keep-outs near it' };
const DEPTH_NOT_KNOWN: OfKind = { leftOut: 'depth not known' };
const HEIGHT_NOT_KNOWN: OfKind = { leftOut: 'height not known' };
const NOT_ON_FACE: OfKind = { leftOut: 'point not on the face of its substrate' };
const NO_NUMBER: OfKind = { leftOut: 'numbers too large or too small to compute with' };

export const crossesKeepOut: Rule = {
  id: 'crosses-keep-out',
  class: 'site',
  severity: 'error',
  lessGrave:
    'Info for bars known from a design drawing; a warning where the position tolerance of what is known from a design drawing accounts for it, unless a hole goes into a tendon or a live service; a warning or info where only the position tolerance of the keep-out is missed.',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole comes too near to something that must not be hit.',
  why: 'A struck tendon or live service can kill; a cut bar weakens the structure. That no crossing is found says nothing about what is in the concrete.',
  mend: 'Move the hole, shorten it, or have the keep-out measured and its record corrected.',
  accept:
    'A bar known from a drawing may lie elsewhere; it is looked for on site. Nothing else without the engineer in charge.',
  data: {
    keepOut: 'id of the keep-out',
    ...OTHER_INPUT,
    kind: 'what it is',
    knownFrom: 'where it is known from',
    clear: 'clear distance between hole and shape, mm; negative where the hole goes into it',
    standoff: 'least clear distance, mm',
    positionTolerance: 'how far the thing may lie from the shape, mm; absent where the layout does not say',
  },
  message: ({ clear, standoff, positionTolerance, ...data }, say) => {
    if (goesInto(Number(clear))) return `The hole goes into ${inWords(data)}.`;
    const passes = `The hole passes ${inWords(data)} at ${say.length(clear)}`;
    return isShort(Number(clear), Number(standoff))
      ? `${passes}; at least ${say.length(standoff)} must be kept.`
      : `${passes}. The ${say.length(standoff)} to be kept may be missed, for it may lie ${say.length(positionTolerance)} off.`;
  },
  causeMessage: (data) => {
    if (data.kind === 'bar' && data.knownFrom === 'design-drawing')
      return 'Holes meet bars that are known from a design drawing; look for them before drilling.';
    return isShort(Number(data.clear), Number(data.standoff))
      ? `Holes come too near to ${inWords(data)}.`
      : `Holes may come too near to ${inWords(data)}, because of its position tolerance.`;
  },
  example: {
    form: 'members',
    bad: '"keepOuts": [{ "id": "T-1", "kind": "tendon", "standoff": 50, "knownFrom": "scan",\n  "shape": { "path": { "points": [[0, 1000, 3030], [9000, 1000, 3030]], "radius": 10 } } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1064.9, 3000], "axis": [0, 0, 1] }\n]',
    good: '"keepOuts": [{ "id": "T-1", "kind": "tendon", "standoff": 50, "knownFrom": "scan",\n  "shape": { "path": { "points": [[0, 1000, 3030], [9000, 1000, 3030]], "radius": 10 } } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1066, 3000], "axis": [0, 0, 1] }\n]',
  },
  checkSite(site, run) {
    const known = keepOutsOf(site, run);
    const index = new KeepOutIndex([...known.keys()], site.holeCount * MOST_TESTS_OF_HOLE + FEW_TESTS);
    if (index.count < known.size) run.leftOut(NO_SHAPE, known.size - index.count);
    if (index.count === 0) return;
    const near = new NearHole(site, run, known);
    const { x, y, z } = site.points;
    const p: [number, number, number] = [0, 0, 0];
    judgeHoles<Swept>(
      site,
      run,
      (kind) => ofKind(site, kind),
      (i, ofAll) => {
        const depth = ofAll.depth ?? site.sweptDepth(i);
        if (Number.isNaN(depth)) return DEPTH_NOT_KNOWN;
        if (Number.isNaN(z[i])) return HEIGHT_NOT_KNOWN;
        if (site.isPlaceInDoubt(i)) return NOT_ON_FACE;
        p[0] = x[i];
        p[1] = y[i];
        p[2] = z[i];
        near.hole = i;
        near.isNumber = true;
        if (!index.near(p, ofAll.axis, depth, ofAll.radius ?? site.diameter(i) / 2, near.judge)) return TOO_MANY;
        return near.isNumber ? 'passed' : NO_NUMBER;
      },
    );
  },
};

const NO_SHAPE = 'keep-out without a volume';

/** What holes of a kind have in common; absent: each has its own. */
interface Swept {
  axis: Vec3;
  depth: number | undefined;
  radius: number | undefined;
}

function ofKind(site: Site, kind: Kind): OfKind | { each: Swept } {
  const { type, axis, substrate, first, hasDiameter, hasDepth } = kind;
  if (type === undefined && !hasDepth) return DEPTH_NOT_KNOWN;
  if (type === undefined && !hasDiameter) return { leftOut: 'diameter not known' };
  if (axis === undefined)
    return { leftOut: (substrate < 0 ? undefined : site.whyNoSurface(first)) ?? 'axis not known' };
  const radius = hasDiameter || type === undefined ? undefined : type.diameter / 2;
  return { each: { axis, depth: sweptDepthOf(kind), radius } };
}

/** What is said of the keep-outs near a hole: one function for all holes, a new one for each would be garbage a million times. */
class NearHole {
  hole = 0;
  /** Whether all distances could be computed. */
  isNumber = true;

  constructor(
    private readonly site: Site,
    private readonly run: SiteRun,
    private readonly known: KnownKeepOuts,
  ) {}

  readonly judge = (keepOut: KeepOut, clear: number): void => {
    const { site, hole } = this;
    const { id, kind, knownFrom, standoff, positionTolerance } = keepOut;
    if (clear >= distanceThatMatters(keepOut) - LENGTH_SLACK_MM) return;
    if (Number.isNaN(clear)) {
      this.isNumber = false;
      return;
    }
    const severity = severityOf(keepOut, clear);
    if (severity === undefined) return;
    const parts = this.known.get(keepOut) ?? [];
    const from = parts.includes(site.partOf(hole)) ? undefined : parts.at(0);
    const other = from && { otherInput: from.input + 1, otherName: from.name };
    const tolerance = positionTolerance === undefined ? {} : { positionTolerance };
    const data = { keepOut: id, ...other, kind, knownFrom, clear, standoff, ...tolerance };
    const cause = isDrawnBar(keepOut)
      ? `bars ${site.substrates.nameOf(hole)}`
      : `${isShort(clear, standoff) ? '' : 'may '}${from?.input ?? ''} ${id}`;
    this.run.atHole(hole, { data, cause, ...(severity !== 'error' && { severity }) });
  };
}

/** Things that hurt people when they are struck. */
const DANGEROUS: ReadonlySet<string> = new Set(['tendon', 'live-service']);

/** How grave it is; undefined where there is nothing to say. */
function severityOf(keepOut: KeepOut, clear: number): Severity | undefined {
  const { kind, knownFrom, standoff, positionTolerance } = keepOut;
  const isDangerous = DANGEROUS.has(kind);
  if (!isShort(clear, standoff)) return isDrawnBar(keepOut) ? undefined : isDangerous ? 'warning' : 'info';
  if (isDrawnBar(keepOut)) return 'info';
  // No tolerance makes it less that a hole goes right through what kills.
  if (knownFrom !== 'design-drawing' || (isDangerous && goesInto(clear))) return 'error';
  return positionTolerance !== undefined && standoff - clear <= positionTolerance + LENGTH_SLACK_MM
    ? 'warning'
    : 'error';
}

/** Most holes meet the mat somewhere, and it is laid as it falls. */
function isDrawnBar({ kind, knownFrom }: KeepOut): boolean {
  return kind === 'bar' && knownFrom === 'design-drawing';
}

function isShort(clear: number, standoff: number): boolean {
  return clear < standoff - LENGTH_SLACK_MM;
}

function goesInto(clear: number): boolean {
  return clear <= LENGTH_SLACK_MM;
}

function inWords({ keepOut, otherName, kind, knownFrom }: Record<string, unknown>): string {
  const words = [kind, knownFrom].map((value) => String(value).replace('-', ' '));
  return `keep-out "${keepOut}"${inInput(otherName)} (${words[0]}, known from a ${words[1]})`;
}
