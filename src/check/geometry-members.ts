/** Members of a layout that say where or how large something is; one of another name is not read at all. */
export const GEOMETRY_MEMBERS: ReadonlySet<string> = new Set([
  ...['point', 'points', 'axis', 'diameter', 'depth', 'embedment', 'face', 'inward', 'outline', 'openings'],
  ...['thickness', 'zones', 'offset', 'finishes', 'deck', 'voids', 'run', 'pattern', 'pitch', 'phase', 'phaseFrom'],
  ...['width', 'lowWidth', 'highWidth', 'cover', 'ribDepth', 'overRib', 'shape', 'path', 'prism', 'sphere', 'base'],
  ...['extrude', 'centre', 'radius', 'standoff', 'elevation', 'finishedFloor', 'structuralTop', 'soffits'],
  ...['origin', 'turnDeg', 'nominal', 'moveAllowance'],
]);
