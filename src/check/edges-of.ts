import { PlanBox } from '../geometry/plan-box.js';
import type { Ring } from '../geometry/ring.js';
import { along } from '../geometry/vector.js';
import type { RuleOption } from '../model/rule.js';
import { ConcreteEdges } from './concrete-edges.js';
import { type EdgePieces, edgePieces, type Piece } from './edge-pieces.js';
import type { Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { type Surface, uOn, vOn } from './surface.js';
import { TouchingOutlines } from './touching-outlines.js';

/** The option of the rules that need to know where outlines touch. */
export const TOUCH_OPTION: RuleOption = {
  what: 'How far off each other edges of two substrates may lie and still touch: our own definition.',
  unit: 'mm',
  default: 1,
  least: 0,
  most: 1000,
};

const made = new WeakMap<Site, Map<number, SiteEdges>>();

/** The edges of the substrates of a site; looked at once. */
export function edgesOf(site: Site, touchMm: number): SiteEdges {
  const ofSite = made.get(site) ?? new Map<number, SiteEdges>();
  made.set(site, ofSite);
  const known = ofSite.get(touchMm) ?? new SiteEdges(site.surfaces, touchMm, largestLeastEdge(site));
  ofSite.set(touchMm, known);
  return known;
}

function largestLeastEdge({ types }: Site): number {
  return types.records.reduce((most, type) => Math.max(most, type?.minEdge?.value ?? 0), 0);
}

/** The edges of substrates, each with regard to the others. Substrates go by their numbers. */
export class SiteEdges {
  private readonly touching: TouchingOutlines;
  private readonly touchMm: number;
  private readonly pieces = new Map<number, EdgePieces | undefined>();
  private readonly known = new Map<number, ConcreteEdges | undefined>();

  /** @param reachMm how near an edge of another substrate must lie to an outline to matter there */
  constructor(
    private readonly surfaces: readonly (Surface | undefined)[],
    touchMm: number,
    private readonly reachMm: number,
  ) {
    this.touchMm = touchMm + LENGTH_SLACK_MM;
    this.touching = new TouchingOutlines(surfaces, this.touchMm);
  }

  /** Whether so many edges lie beside one of a substrate that not all were compared with it. */
  isCut(substrate: number): boolean {
    return this.touching.isCut(substrate);
  }

  /** The edges that holes of a substrate are judged by; undefined where it has no face or no outline. */
  of(substrate: number): ConcreteEdges | undefined {
    if (!this.known.has(substrate)) this.known.set(substrate, this.make(substrate));
    return this.known.get(substrate);
  }

  /** The edges of a substrate itself, cut where others touch them. */
  piecesOf(substrate: number): EdgePieces | undefined {
    if (!this.pieces.has(substrate)) {
      const surface = this.surfaces[substrate];
      const touching = (edge: number) => this.touching.of(substrate, edge);
      this.pieces.set(substrate, surface?.outline && edgePieces(surface, surface.outline, touching, this.touchMm));
    }
    return this.pieces.get(substrate);
  }

  private make(substrate: number): ConcreteEdges | undefined {
    const surface = this.surfaces[substrate];
    const own = this.piecesOf(substrate);
    if (surface?.outline === undefined || own === undefined) return undefined;
    const { outline } = surface;
    const beyond = this.beyond(substrate, surface, outline, own);
    return new ConcreteEdges(surface, outline, own.pieces, beyond.pieces, beyond.isCut);
  }

  /** Edges of the concrete within reach of an outline that belong to substrates into which its concrete goes on, from one to the next. */
  private beyond(substrate: number, surface: Surface, outline: Ring, own: EdgePieces) {
    const seen = new Set([substrate, ...own.beyond]);
    const pieces: Piece[] = [];
    // What is added to a set while it is gone through is gone through as well.
    for (const number of seen) {
      const from = this.surfaces[number];
      const next = number === substrate ? undefined : this.piecesOf(number);
      if (from === undefined || next === undefined) continue;
      const near = nearTo(
        outline,
        next.pieces.map((piece) => inPlaneOf(surface, from, piece)),
        this.reachMm,
      );
      pieces.push(...near.filter(({ kind }) => kind === 'free' || kind === 'opening'));
      if (near.length > 0) for (const other of next.beyond) seen.add(other);
    }
    return { pieces, isCut: [...seen].some((number) => this.isCut(number)) };
  }
}

/** A piece of one face, as it lies in the plane of another. */
function inPlaneOf(surface: Surface, from: Surface, piece: Piece): Piece {
  const [fromU, fromV, toU, toV] = piece.segment;
  const place = (u: number, v: number) => along(along(from.origin, from.u, u), from.v, v);
  const [start, end] = [place(fromU, fromV), place(toU, toV)];
  return { ...piece, segment: [uOn(surface, start), vOn(surface, start), uOn(surface, end), vOn(surface, end)] };
}

/** The pieces that come within reach of the box of a ring. */
function nearTo(ring: Ring, pieces: readonly Piece[], reach: number): Piece[] {
  const box = new PlanBox();
  for (let k = 0; k < ring.u.length; k++) box.add(ring.u[k], ring.v[k]);
  return pieces.filter(
    ({ segment: [fromU, fromV, toU, toV] }) =>
      Math.max(fromU, toU) >= box.xLow - reach &&
      Math.min(fromU, toU) <= box.xHigh + reach &&
      Math.max(fromV, toV) >= box.yLow - reach &&
      Math.min(fromV, toV) <= box.yHigh + reach,
  );
}
