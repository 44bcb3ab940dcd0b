/**
 * How a value is written: `mm` for lengths (all numbers in it are millimetres), `plain` for all else,
 * or the members of an object in the order of the schema. An array has the form of its elements.
 */
export type Form = 'mm' | 'plain' | Fields;

/** Members of an object in the order of the schema. */
export interface Fields {
  readonly [member: string]: Form;
}

const sourcedLength = { value: 'mm', source: 'plain' } as const;
const positionTolerance = mm('radius', 'along', 'across', 'height');
const moveAllowance = { ...mm('along', 'across'), ...plain('run', 'ask', 'movesTogether') };
const outline = { ...mm('points'), ...plain('edges') };

/** The form of one hole. */
export const holeForm: Fields = {
  ...plain('id', 'tag', 'trade', 'holeType', 'substrate', 'level', 'area', 'group', 'role'),
  point: 'mm',
  axis: 'plain',
  ...mm('diameter', 'depth'),
  positionTolerance,
  depthTolerance: 'mm',
  moveAllowance,
  above: plain('level', 'protectedBy', 'protection', 'firestop'),
  replaces: 'plain',
  origin: plain('source', 'row', 'element', 'code'),
  ...plain('note', 'ext'),
};

const frame: Fields = {
  ...plain('name', 'heightDatum', 'trueNorthDeg', 'projectNorthDeg'),
  georeference: plain('crs', 'eastings', 'northings', 'height', 'xAxisAbscissa', 'xAxisOrdinate', 'scale'),
  note: 'plain',
};

const level: Fields = {
  ...plain('id', 'name', 'building'),
  ...mm('elevation', 'finishedFloor', 'structuralTop', 'soffits'),
  ext: 'plain',
};

const grid: Fields = {
  ...plain('id', 'name', 'building', 'levels'),
  lines: { ...plain('name'), ...mm('from', 'to') },
  ext: 'plain',
};

const controlPoint: Fields = {
  id: 'plain',
  point: 'mm',
  class: 'plain',
  ...mm('sigmaPlan', 'sigmaHeight'),
  ...plain('level', 'source', 'date', 'verified', 'replacedBy', 'note', 'ext'),
};

const area: Fields = {
  ...plain('id', 'name', 'level'),
  outline: 'mm',
  ...plain('kinds', 'validFrom', 'validTo', 'condition', 'references', 'ext'),
};

const trade: Fields = {
  ...plain('id', 'name', 'firm', 'party', 'system'),
  symbol: plain('text', 'shape', 'colour', 'rgb'),
  ext: 'plain',
};

const abandonedLimit: Fields = { ...mm('value'), depthFactor: 'plain' };

const holeType: Fields = {
  ...plain('id', 'name', 'principle', 'made', 'purpose', 'form'),
  ...mm('diameter', 'diameterTolerance', 'depth', 'depthTolerance', 'embedment'),
  squarenessDeg: 'plain',
  positionTolerance,
  moveAllowance,
  bit: plain('nominal', 'standard'),
  rod: 'plain',
  minSpacing: sourcedLength,
  minEdge: sourcedLength,
  minThickness: sourcedLength,
  backing: sourcedLength,
  abandonedSpacing: { unfilled: abandonedLimit, filled: abandonedLimit, source: 'plain' },
  flutes: { in: 'plain', ...mm('maxOffset'), source: 'plain' },
  ...plain('directions', 'cleaning'),
  approval: plain('number', 'edition', 'expires', 'table', 'source'),
  ...plain('note', 'ext'),
};

const substrate: Fields = {
  ...plain('id', 'name', 'kind', 'level'),
  face: { ...mm('point'), ...plain('inward') },
  outline,
  openings: outline,
  thickness: 'mm',
  zones: { kind: 'plain', outline, ...mm('thickness', 'offset') },
  deck: {
    run: 'plain',
    ...mm('pitch', 'phase'),
    phaseFrom: 'plain',
    ...mm('lowWidth', 'highWidth', 'ribDepth', 'overRib', 'steel'),
  },
  voids: { run: 'plain', ...mm('pitch', 'phase', 'width', 'cover') },
  finishes: { kind: 'plain', thickness: 'mm' },
  ...plain('source', 'scans', 'note', 'ext'),
};

const keepOut: Fields = {
  ...plain('id', 'kind', 'name'),
  shape: { path: mm('points', 'radius'), prism: mm('base', 'extrude'), sphere: mm('centre', 'radius') },
  ...mm('standoff', 'positionTolerance'),
  ...plain('knownFrom', 'substrate', 'source', 'note', 'ext'),
};

const bore: Fields = {
  ...plain('id'),
  ...mm('point'),
  axis: 'plain',
  ...mm('diameter', 'depth'),
  ...plain('end', 'filled', 'knownFrom', 'substrate', 'source', 'note', 'ext'),
};

const group: Fields = {
  ...plain('id', 'kind', 'run'),
  ...mm('pattern', 'patternTolerance'),
  movesTogether: 'plain',
  designSpacing: sourcedLength,
  positionTolerance,
  moveAllowance,
  ext: 'plain',
};

/** The form of a layout. */
export const layoutForm: Fields = {
  ...plain('$schema', 'ahx', 'kind', 'id', 'title'),
  revision: plain('label', 'issued', 'by', 'supersedes', 'note'),
  parent: plain('layout', 'revision', 'digest'),
  changes: plain('kind', 'holes', 'reason', 'question'),
  project: plain('name', 'number', 'phase', 'place'),
  submittal: plain('number', 'transmittal', 'specSection', 'purpose', 'preparedBy', 'checkedBy'),
  parties: plain('id', 'firm', 'person', 'role', 'contact', 'ext'),
  sources: plain('id', 'title', 'kind', 'revision', 'date', 'from', 'digest', 'ext'),
  display: plain('length', 'fraction', 'decimals'),
  frame,
  buildings: { ...plain('id', 'name'), origin: 'mm', ...plain('turnDeg', 'ext') },
  levels: level,
  grids: grid,
  control: controlPoint,
  areas: area,
  trades: trade,
  holeTypes: holeType,
  substrates: substrate,
  keepOuts: keepOut,
  bores: bore,
  groups: group,
  holes: holeForm,
  packages: plain('id', 'title', 'holes', 'areas', 'sequence', 'date', 'crew', 'prerequisite', 'ext'),
  ...plain('extensionsRequired', 'ext'),
};

function mm(...names: readonly string[]): Fields {
  return Object.fromEntries(names.map((name) => [name, 'mm']));
}

function plain(...names: readonly string[]): Fields {
  return Object.fromEntries(names.map((name) => [name, 'plain']));
}
