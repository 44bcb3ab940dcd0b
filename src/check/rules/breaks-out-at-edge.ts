import { along, dot } from '../../geometry/vector.js';
import type { ConcreteEdges } from '../concrete-edges.js';
import type { Piece } from '../edge-pieces.js';
import { edgesOf, TOUCH_OPTION } from '../edges-of.js';
import { judgeHoles } from '../judge-holes.js';
import type { OfKind } from '../judge-kinds.js';
import type { Rule } from '../rule.js';
import { NO_HEIGHT, type Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import type { Surface } from '../surface.js';
import { TOO_MANY_EDGES } from '../touching-outlines.js';

/** More places along one axis than this are not looked at: the bit is then a needle. */
const MOST_PLACES = 1000;

export const breaksOutAtEdge: Rule = {
  id: 'breaks-out-at-edge',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole comes out of the concrete at an edge or an opening.',
  why: 'The bit runs into the air beside the slab, tears the edge off on its way and throws the pieces down.',
  mend: 'Move the hole away from the edge, or turn its axis into the concrete.',
  needs: 'A substrate with a face and an outline; for a slanting hole a depth.',
  options: { touch: TOUCH_OPTION },
  data: {
    substrate: 'id of the substrate of the hole',
    edge: 'kind of the edge: `free` or `opening`',
    distance: 'distance of the axis from the edge, mm',
    radius: 'half of the diameter, mm',
    at: 'where that is: at the `point` of the hole, or `inside` along its axis',
  },
  message: ({ edge, distance, radius, at }, say) =>
    `The hole comes out at ${edge === 'opening' ? 'an opening' : 'an edge'}: its axis comes within ${say.length(distance)} of it${at === 'inside' ? ' on its way into the concrete' : ''}, and half of the bit is ${say.length(radius)}.`,
  causeMessage: ({ substrate }) => `Holes come out of substrate "${substrate}" at edges or openings.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [4.9, 5000, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [5, 5000, 3000] }\n]',
  },
  checkSite(site, run) {
    const siteEdges = edgesOf(site, run.option('touch'));
    judgeHoles<{ edges: ConcreteEdges; surface: Surface; isSquare: boolean }>(
      site,
      run,
      ({ surface, axis, substrate, first }) => {
        if (substrate < 0) return undefined;
        const edges = surface && siteEdges.of(substrate);
        if (surface === undefined || edges === undefined)
          return { leftOut: site.whyNoSurface(first) ?? 'substrate without an outline' };
        if (edges.isCut) return { leftOut: TOO_MANY_EDGES };
        return { each: { edges, surface, isSquare: axis === undefined || dot(axis, surface.inward) === 1 } };
      },
      (i, { edges, surface, isSquare }) => judge(site, i, edges, surface, isSquare),
    );
  },
};

function judge(site: Site, i: number, edges: ConcreteEdges, surface: Surface, isSquare: boolean): OfKind {
  const p = site.point(i);
  const radius = site.diameter(i) / 2;
  if (Number.isNaN(p[2])) return { leftOut: NO_HEIGHT };
  if (Number.isNaN(radius)) return { leftOut: 'diameter not known' };
  if (!edges.isOn(edges.uOf(...p), edges.vOf(...p))) return { leftOut: 'not on the concrete of its substrate' };
  const near = nearestAt(edges, p, radius);
  if (near !== undefined) return said(near, edges.distance, 'point');
  const axis = site.axis(i);
  if (isSquare || axis === undefined) return 'passed';
  const depth = site.depth(i);
  const places = Math.ceil(depth / radius);
  if (Number.isNaN(places)) return { leftOut: 'depth not known' };
  if (places > MOST_PLACES) return { leftOut: 'far too long for its diameter' };
  // Places no farther apart than the radius miss no edge that the axis crosses.
  for (let k = 1; k <= places; k++) {
    const found = nearestAt(edges, along(p, axis, (depth * k) / places), radius);
    if (found !== undefined) return said(found, edges.distance, 'inside');
  }
  return 'passed';

  function said({ kind: edge }: Piece, distance: number, at: 'point' | 'inside'): OfKind {
    const substrate = surface.substrate.id;
    return { finding: { data: { substrate, edge, distance, radius, at }, cause: substrate } };
  }
}

function nearestAt(edges: ConcreteEdges, p: readonly [number, number, number], radius: number): Piece | undefined {
  return edges.nearest('edge', edges.uOf(...p), edges.vOf(...p), radius - LENGTH_SLACK_MM);
}
