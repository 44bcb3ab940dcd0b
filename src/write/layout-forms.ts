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

const positionTolerance = { radius: 'mm', along: 'mm', across: 'mm', height: 'mm' } as const;

const moveAllowance = {
  along: 'mm',
  across: 'mm',
  run: 'plain',
  ask: 'plain',
  movesTogether: 'plain',
} as const;

const outline = { points: 'mm', edges: 'plain' } as const;

/** The form of one hole. */
export const holeForm = {
  id: 'plain',
  tag: 'plain',
  trade: 'plain',
  holeType: 'plain',
  substrate: 'plain',
  level: 'plain',
  area: 'plain',
  group: 'plain',
  role: 'plain',
  point: 'mm',
  axis: 'plain',
  diameter: 'mm',
  depth: 'mm',
  positionTolerance,
  depthTolerance: 'mm',
  moveAllowance,
  above: { level: 'plain', protectedBy: 'plain', protection: 'plain', firestop: 'plain' },
  replaces: 'plain',
  origin: { source: 'plain', row: 'plain', element: 'plain', code: 'plain' },
  note: 'plain',
  ext: 'plain',
} as const satisfies Fields;

const levelForm = {
  id: 'plain',
  name: 'plain',
  building: 'plain',
  elevation: 'mm',
  finishedFloor: 'mm',
  structuralTop: 'mm',
  soffits: 'mm',
  ext: 'plain',
} as const;

const controlForm = {
  id: 'plain',
  point: 'mm',
  class: 'plain',
  sigmaPlan: 'mm',
  sigmaHeight: 'mm',
  level: 'plain',
  source: 'plain',
  date: 'plain',
  verified: 'plain',
  replacedBy: 'plain',
  note: 'plain',
  ext: 'plain',
} as const;

const holeTypeForm = {
  id: 'plain',
  name: 'plain',
  principle: 'plain',
  made: 'plain',
  purpose: 'plain',
  form: 'plain',
  diameter: 'mm',
  diameterTolerance: 'mm',
  depth: 'mm',
  depthTolerance: 'mm',
  embedment: 'mm',
  squarenessDeg: 'plain',
  positionTolerance,
  moveAllowance,
  bit: { nominal: 'plain', standard: 'plain' },
  rod: 'plain',
  minSpacing: sourcedLength,
  minEdge: sourcedLength,
  minThickness: sourcedLength,
  backing: sourcedLength,
  abandonedSpacing: sourcedLength,
  directions: 'plain',
  cleaning: 'plain',
  approval: { number: 'plain', edition: 'plain', expires: 'plain', table: 'plain', source: 'plain' },
  note: 'plain',
  ext: 'plain',
} as const;

const substrateForm = {
  id: 'plain',
  name: 'plain',
  kind: 'plain',
  level: 'plain',
  face: { point: 'mm', inward: 'plain' },
  outline,
  openings: outline,
  thickness: 'mm',
  zones: { kind: 'plain', outline, thickness: 'mm', offset: 'mm' },
  deck: {
    run: 'plain',
    pitch: 'mm',
    phase: 'mm',
    phaseFrom: 'plain',
    lowWidth: 'mm',
    highWidth: 'mm',
    ribDepth: 'mm',
    overRib: 'mm',
    steel: 'mm',
  },
  voids: { run: 'plain', pitch: 'mm', phase: 'mm', width: 'mm', cover: 'mm' },
  finishes: { kind: 'plain', thickness: 'mm' },
  source: 'plain',
  note: 'plain',
  ext: 'plain',
} as const;

const keepOutForm = {
  id: 'plain',
  kind: 'plain',
  name: 'plain',
  shape: {
    path: { points: 'mm', radius: 'mm' },
    prism: { base: 'mm', extrude: 'mm' },
    sphere: { centre: 'mm', radius: 'mm' },
  },
  standoff: 'mm',
  positionTolerance: 'mm',
  knownFrom: 'plain',
  substrate: 'plain',
  source: 'plain',
  note: 'plain',
  ext: 'plain',
} as const;

const groupForm = {
  id: 'plain',
  kind: 'plain',
  run: 'plain',
  pattern: 'mm',
  patternTolerance: 'mm',
  movesTogether: 'plain',
  designSpacing: sourcedLength,
  positionTolerance,
  moveAllowance,
  ext: 'plain',
} as const;

/** The form of a layout; what holds no length and no order worth keeping is `plain`. */
export const layoutForm = {
  $schema: 'plain',
  ahx: 'plain',
  kind: 'plain',
  id: 'plain',
  title: 'plain',
  revision: { label: 'plain', issued: 'plain', by: 'plain', supersedes: 'plain', note: 'plain' },
  parent: { layout: 'plain', revision: 'plain', digest: 'plain' },
  changes: { kind: 'plain', holes: 'plain', reason: 'plain', question: 'plain' },
  project: { name: 'plain', number: 'plain', phase: 'plain', place: 'plain' },
  submittal: {
    number: 'plain',
    transmittal: 'plain',
    specSection: 'plain',
    purpose: 'plain',
    preparedBy: 'plain',
    checkedBy: 'plain',
  },
  parties: {
    id: 'plain',
    firm: 'plain',
    person: 'plain',
    role: 'plain',
    contact: 'plain',
    ext: 'plain',
  },
  sources: {
    id: 'plain',
    title: 'plain',
    kind: 'plain',
    revision: 'plain',
    date: 'plain',
    from: 'plain',
    digest: 'plain',
    ext: 'plain',
  },
  display: { length: 'plain', fraction: 'plain', decimals: 'plain' },
  frame: {
    name: 'plain',
    heightDatum: 'plain',
    trueNorthDeg: 'plain',
    projectNorthDeg: 'plain',
    georeference: {
      crs: 'plain',
      eastings: 'plain',
      northings: 'plain',
      height: 'plain',
      xAxisAbscissa: 'plain',
      xAxisOrdinate: 'plain',
      scale: 'plain',
    },
    note: 'plain',
  },
  buildings: { id: 'plain', name: 'plain', origin: 'mm', turnDeg: 'plain', ext: 'plain' },
  levels: levelForm,
  grids: {
    id: 'plain',
    name: 'plain',
    building: 'plain',
    levels: 'plain',
    lines: { name: 'plain', from: 'mm', to: 'mm' },
    ext: 'plain',
  },
  control: controlForm,
  areas: {
    id: 'plain',
    name: 'plain',
    level: 'plain',
    outline: 'mm',
    kinds: 'plain',
    validFrom: 'plain',
    validTo: 'plain',
    condition: 'plain',
    references: 'plain',
    ext: 'plain',
  },
  trades: {
    id: 'plain',
    name: 'plain',
    firm: 'plain',
    party: 'plain',
    system: 'plain',
    symbol: { text: 'plain', shape: 'plain', colour: 'plain', rgb: 'plain' },
    ext: 'plain',
  },
  holeTypes: holeTypeForm,
  substrates: substrateForm,
  keepOuts: keepOutForm,
  groups: groupForm,
  holes: holeForm,
  packages: {
    id: 'plain',
    title: 'plain',
    holes: 'plain',
    areas: 'plain',
    sequence: 'plain',
    date: 'plain',
    crew: 'plain',
    prerequisite: 'plain',
    ext: 'plain',
  },
  extensionsRequired: 'plain',
  ext: 'plain',
} as const satisfies Fields;
