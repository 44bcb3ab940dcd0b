import { type Kind, kindsOf } from './kinds.js';
import type { ConcreteEdges } from './concrete-edges.js';
import type { Piece } from './edge-pieces.js';
import type { SiteEdges } from './edges-of.js';
import type { SiteRun } from './run.js';
import { NO_HEIGHT, type Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { TOO_MANY_EDGES } from './touching-outlines.js';

/** Whether holes can lie too near to an edge at all: a type has a least distance, or may have one. */
export function hasLeastEdge({ types }: Site): boolean {
  return types.records.some((type) => type === undefined || type.minEdge !== undefined);
}

/** What there is to judge about the holes of a kind. */
type OfKind = { edges: ConcreteEdges; limit: number } | { leftOut: string } | undefined;

/**
 * Compares the least edge distance of the type of each hole with the nearest edge of its concrete, or with the
 * nearest movement joint, and calls `found` where that is nearer. Counts what it judged and left out.
 */
export function judgeEdges(
  site: Site,
  siteEdges: SiteEdges,
  run: SiteRun,
  what: 'edge' | 'joint',
  found: (i: number, kind: Kind, nearest: Piece, distance: number) => void,
): void {
  const kinds = kindsOf(site);
  const ofKinds = kinds.list.map((kind) => {
    const own = ofKind(site, siteEdges, kind, what);
    if (own === undefined || 'edges' in own) return own;
    run.leftOut(own.leftOut, kind.count);
    return undefined;
  });
  const { x, y, z } = site.points;
  let judged = 0;
  for (let i = 0; i < site.holeCount; i++) {
    const index = kinds.of[i];
    const own = ofKinds[index];
    if (own === undefined) continue;
    if (Number.isNaN(z[i])) {
      run.leftOut(NO_HEIGHT);
      continue;
    }
    const { edges, limit } = own;
    const u = edges.uOf(x[i], y[i], z[i]);
    const v = edges.vOf(x[i], y[i], z[i]);
    if (!edges.isOn(u, v)) {
      run.leftOut('not on the concrete of its substrate');
      continue;
    }
    judged++;
    const piece = edges.nearest(what, u, v, limit - LENGTH_SLACK_MM);
    if (piece !== undefined) found(i, kinds.list[index], piece, edges.distance);
  }
  run.judged(judged);
}

function ofKind(site: Site, siteEdges: SiteEdges, kind: Kind, what: 'edge' | 'joint'): OfKind {
  const { type, surface, out } = kind;
  if (type !== undefined && type.minEdge === undefined) return undefined;
  const edges = surface && siteEdges.of(kind.substrate);
  if (what === 'joint' && edges !== undefined && !edges.hasJoint && !edges.isCut) return undefined;
  if (out !== undefined) return { leftOut: out };
  if (type?.minEdge === undefined) return { leftOut: 'record of its hole type broken' };
  if (edges?.isCut) return { leftOut: TOO_MANY_EDGES };
  if (edges !== undefined) return { edges, limit: type.minEdge.value };
  return { leftOut: site.whyNoSurface(kind.first) ?? 'substrate without an outline' };
}
