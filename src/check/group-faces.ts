import { dot, type Vec3 } from '../geometry/vector.js';
import { commonInward } from './group-members.js';
import type { Site } from './site.js';
import { zoneAt } from './surface.js';

/** A face on which a member of a group lies. */
export interface MemberFace {
  member: number;
  /** Along the direction into the concrete, mm. */
  height: number;
  /** Substrate and zone. */
  key: string;
}

/** The outermost and the innermost face of the members, of several the first; or why they cannot be told. */
export function outerAndInner(site: Site, members: Int32Array): [outer: MemberFace, inner: MemberFace] | string {
  const faceless = members.find((i) => site.surface(i) === undefined);
  if (faceless !== undefined) return `a member is not judged (${site.whyNoSurface(faceless)})`;
  const inward = commonInward(site, members);
  if (inward === undefined) return 'faces of different directions';
  let [outer, inner] = [undefined, undefined] as (MemberFace | undefined)[];
  for (const member of members) {
    const face = faceOf(site, member, inward);
    if (face === undefined) return 'height of a member not known on an upright face with zones';
    if (outer === undefined || face.height < outer.height) outer = face;
    if (inner === undefined || face.height > inner.height) inner = face;
  }
  return [outer as MemberFace, inner as MemberFace];
}

function faceOf(site: Site, member: number, inward: Vec3): MemberFace | undefined {
  const surface = site.surface(member);
  if (surface === undefined) return undefined;
  const name = site.substrates.nameOf(member);
  const plane = dot(surface.origin, inward);
  if (surface.zones.length === 0) return { member, height: plane, key: `${name}` };
  const point = site.point(member);
  if (Number.isNaN(point[2])) return undefined;
  const zone = zoneAt(surface, point);
  const key = `${name}/${zone === undefined ? '' : surface.zones.indexOf(zone)}`;
  return { member, height: plane + (zone?.offset ?? 0), key };
}
