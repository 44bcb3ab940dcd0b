import { PLAN_WORDS } from '../../draw/plan-words.js';
import { GRID_DIMENSION_WORDS } from '../../frame/grid-dimension-text.js';
import { CAUTION } from '../../model/caution.js';
import { english } from '../languages/en.js';
import type { SheetWords } from './sheet-words.js';

const s = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** The words of a crew sheet in English. */
export const ENGLISH_SHEET_WORDS: SheetWords = {
  language: 'en',
  plan: PLAN_WORDS,
  grid: GRID_DIMENSION_WORDS,
  kinds: { package: 'Package', area: 'Area', level: 'Level' },
  revision: 'Revision',
  supersedes: (label) => (label === undefined ? 'supersedes: not said' : `supersedes ${label}`),
  sheetOf: (number, count) => `Sheet ${number} of ${count}`,
  date: (day) => `for ${day}`,
  noDate: 'no date given',
  issued: (day) => `issued ${day}`,
  crew: (name) => `crew: ${name}`,
  lengths: (unit) => `Lengths in ${unit}, rounded as shown.`,
  units: { 'ft-in': 'feet and inches', ft: 'feet', in: 'inches', mm: 'mm', m: 'm' },
  phrases: english,
  labels: {
    move: 'Move',
    holds: 'Holds',
    conditions: 'Conditions',
    checkLimit: 'Check limit',
    substrates: 'Concrete',
    symbols: 'Symbols',
    noDrill: 'No-drill zones',
    call: 'Call',
    control: 'Control',
    order: 'Order',
    caution: 'Caution',
    leftOut: 'Not shown',
    findings: 'Findings',
    changes: 'Changes',
    height: 'Height',
    bores: 'Old bores',
    reading: 'Reading',
  },
  withUnit: (head, unit) => (unit === undefined ? head : `${head} (${unit})`),
  heads: {
    number: 'No.',
    tag: 'Tag',
    symbol: 'Mark',
    bit: 'Bit',
    depth: 'Depth to stop',
    grid: 'From gridlines',
    substrate: 'Key',
  },
  boxes: [
    ['drilled', 'initials'],
    ['depth', 'obstr.'],
    ['along', 'across'],
  ],
  seenFromAbove: 'Seen as if from above, not mirrored, also for holes overhead.',
  planScale: (name) => `Scale ${name}`,
  keyPlan: 'Key plan',
  noOutline: 'no outline given',
  drilled: {
    up: 'Drilled upward.',
    down: 'Drilled downward.',
    level: 'Drilled sideways.',
    slanting: 'Drilled at a slant.',
    unknown: 'Drilling direction not given: ask.',
  },
  noHolds: 'none known from the layout; ask for the journal.',
  areaKinds: {
    pour: 'pour',
    priority: 'priority',
    access: 'limited access',
    closed: 'closed',
    rated: 'fire-rated',
    clean: 'clean',
    'noise-hours': 'noise hours',
    phase: 'phase',
  },
  allowance: ({ along, across, run, isTogether, ask }) => {
    const way = `${along} along the run (${run}), ${across} across${isTogether ? ', whole group together' : ''}`;
    return ask === 'tell-after'
      ? `may shift ${way}, tell the office after; otherwise ask.`
      : `ask before any shift; at most ${way}.`;
  },
  noAllowance: 'no allowance given: ask before any shift.',
  noShift: 'no shift: ask.',
  noRun: 'the run is not given, ask before any shift.',
  anyDirection: 'any direction',
  upright: 'up and down',
  fromX: (angleDeg) => `${angleDeg}° from x to y`,
  checkLimit: (tolerance) => `half of ${tolerance}, the tightest position tolerance here.`,
  noCheckLimit: ['none', 'no position tolerance is given here, or one leaves nothing to one side: ask.'],
  checkRule:
    'Measure a control point not used for the set-up. Off by more: do not mark, ask. Within it: that says nothing about any hole.',
  controlHead: (frame, unit) => `Control (x, y, height${unit === undefined ? '' : `; ${unit}`}), ${frame}`,
  noControl: 'No control points are given: ask.',
  noHeight: 'no height',
  checkPoint: 'check',
  moreControl: (count) => `${s(count, 'more point')} in the layout`,
  core: 'core',
  through: 'through',
  noDepth: 'ask',
  noDepthTolerance: 'limits: ask',
  noGrid: 'no gridlines',
  noSubstrate: 'not named: ask',
  substrates: {
    'solid-slab': 'solid slab',
    'composite-deck': 'composite deck',
    'hollow-plank': 'hollow plank',
    beam: 'beam',
    wall: 'wall',
    other: 'other',
  },
  flutes: { low: 'low flutes only', high: 'high flutes only', either: 'low or high flutes' },
  finishes: {
    fireproofing: 'fireproofing',
    plaster: 'plaster',
    insulation: 'insulation',
    board: 'board',
    coating: 'coating',
    other: 'other layer',
  },
  finish: (kind, thickness) => `${kind} ${thickness} on the face, not counted in the depth`,
  throughNote: (level, protectedBy, protection) =>
    `Goes through. Above: ${level ?? 'level not said'}. Far side protected by: ${
      protectedBy ?? 'nobody named, ask before drilling'
    }${protection === undefined ? '' : ` (${protection})`}.`,
  firestop: (reference) => `Firestop ${reference}.`,
  slantNote: (angleDeg) => `Axis ${angleDeg}° off square to the face: ask how to set it.`,
  noDrillHead: (distance) => `No-drill zones known within ${distance} of these holes; there may be others:`,
  noDrillNone: (distance) =>
    `No-drill zones: none listed within ${distance}. That says nothing about what is in the concrete.`,
  keepOuts: {
    tendon: 'tendon',
    bar: 'bar',
    conduit: 'conduit',
    embed: 'embed',
    'live-service': 'live service',
    other: 'other',
  },
  knownFrom: {
    'design-drawing': 'design drawing',
    'shop-drawing': 'shop drawing',
    scan: 'scan',
    survey: 'survey',
  },
  keepOut: ({ name, kind, standoff, off, from, number, distance }) =>
    `${name} (${kind}): standoff ${standoff}${off === undefined ? '' : `, may lie ${off} off`}; from ${from}; nearest No. ${number}, ${distance}.`,
  moreKeepOuts: (count) => `${s(count, 'more zone')} near these holes not listed: see the plan and ask.`,
  roles: {
    coordinator: 'coordinator',
    'engineer-of-record': 'engineer of record',
    'general-contractor': 'general contractor',
    'trade-contractor': 'trade contractor',
    foreman: 'foreman',
    surveyor: 'surveyor',
    scanner: 'scanning',
    driller: 'drilling',
    quality: 'quality',
    inspector: 'inspector',
    owner: 'owner',
    other: 'other',
  },
  call: (party, role, contact) => `${party} (${role}): ${contact}.`,
  noContact: (parties) => `No contact given: ${parties}.`,
  noParties: 'nobody is named in the layout: ask the foreman.',
  moreParties: (count) => `${s(count, 'more party', 'more parties')} in the layout.`,
  orderGiven: 'as the package lists them.',
  orderByRows: (from, to) => `row by row from ${from} to ${to}, to and fro; groups together.`,
  castIn: (count) => `${s(count, 'cast-in or existing hole')}: nothing to drill there.`,
  broken: (count) => `${s(count, 'hole')} of the package that the layout does not have.`,
  cut: 'Texts that end in … are cut; layout and report have them whole.',
  labelsLeftOut: (count) => `${s(count, 'label')} of the plan for want of room.`,
  shapesLeftOut: (count) =>
    `${s(count, 'outline, zone or hole', 'outlines, zones or holes')} of the plan beyond the most that are drawn.`,
  noSymbol: (trade) => `circle: ${trade}, no symbol given`,
  symbol: (trade, mark) => `${mark}: ${trade}`,
  validity: (from, to) =>
    [from === undefined ? '' : `from ${from}`, to === undefined ? '' : `until ${to}`].filter(Boolean).join(' '),
  listHead: 'The lists as text',
  caution: CAUTION,
  compass: ['N–S', 'NE–SW', 'E–W', 'NW–SE'],
  notChecked: 'this sheet was made without a check: what a check would find is not marked.',
  doNotDrill: 'Do not drill before the office has settled this.',
  finding: (severity, message) => `${capital(severity)}: ${message}`,
  findingAtOther: (hole, message) => `with hole ${hole}, of which the check says: ${message}`,
  acceptedFinding: (owner, until, message) => `Accepted by ${owner} until ${until}: ${message}`,
  moreGeneral: (count) => `${s(count, 'more cause')} without a hole: see the report of the check.`,
  notKept: (count) =>
    `${s(count, 'finding')} of the check not looked at here, there are too many: holes may lack a mark.`,
  holesWithFindings: (some, of) =>
    some === 0
      ? `None at the ${of === 1 ? 'one hole' : `${of} holes`} of this sheet.`
      : `Of the ${s(of, 'hole')} of this sheet ${some} ${some === 1 ? 'has' : 'have'} findings.`,
  holesWithErrors: (numbers) => `Errors, boxes closed: No. ${numbers}.`,
  holesWithWarnings: (numbers) => `Warnings: No. ${numbers}.`,
  holesAccepted: (numbers) => `Accepted for a time: No. ${numbers}.`,
  findingsNotShown: (count) => `${s(count, 'finding')} of these holes not shown here.`,
  checkedAlone: 'Checked alone: layouts of other trades were not looked at.',
  checkedWith: (names) => `Checked together with ${names}.`,
  notLookedAt: (names) => `Not looked at, since they cannot be compared with this layout: ${names}.`,
  otherHoles: (count, trades) => `Broken rings: ${s(count, 'hole')} of other trades (${trades}).`,
  bore: ({ id, end, diameter, depth, number, distance }) =>
    `${id} (${[end, ...(diameter === undefined ? [] : [`dia. ${diameter}`]), ...(depth === undefined ? [] : [`${depth} deep`])].join(', ')}): nearest No. ${number}, ${distance} from middle to middle.`,
  boreEnds: { complete: 'complete', partial: 'partial', abandoned: 'abandoned' },
  moreBores: (count) => `${s(count, 'more existing bore')} near these holes not listed.`,
  heightAbove: {
    finishedFloor: (level) => `above the finished floor of ${level}`,
    structuralTop: (level) => `above the structural slab of ${level}`,
    datum: (datum) => `above the height datum (${datum})`,
  },
  heightOfAll: (height, above) => `Surface at all holes: ${height} ${above}.`,
  heightOf: (height, numbers) => `Surface ${height} (No. ${numbers})`,
  heightRange: (least, most, above) => `Surface: ${least} to ${most} ${above}; each in the layout.`,
  heightAsFound: (numbers) => `Surface as found${numbers === '' ? '' : ` at No. ${numbers}`}: no height is given.`,
  signs: '!! error, ! warning, (!) accepted, Δ changed.',
  reading:
    'Limits of depth: + deeper, − shallower, 0 not that way. Along, across: how far off, by the run. Obstr.: what was in the way.',
  members: {
    point: 'place',
    holeType: 'hole type',
    diameter: 'diameter',
    depth: 'depth',
    depthTolerance: 'limits of depth',
    positionTolerance: 'position tolerance',
    axis: 'axis',
    substrate: 'concrete',
    moveAllowance: 'what may be shifted',
    above: 'far side',
    bit: 'bit',
    thickness: 'thickness',
    face: 'face',
    outline: 'outline',
    name: 'name',
  },
  changed: (revision, what) => `Δ Since revision ${revision}: ${what}.`,
  changeNew: 'new',
  changeMoved: (distance) => `moved by ${distance}, strike the old mark out`,
  changeRespecified: (members) => `other ${members}`,
  changeTag: (from) => (from === undefined ? 'had no tag before' : `tag was ${from}`),
  changeRedefined: (name, members) => `${name} has other values: ${members}`,
  changesOfSheet: (revision, numbers) =>
    numbers === ''
      ? `None at these holes since revision ${revision}.`
      : `Δ New, moved or changed since revision ${revision}: No. ${numbers}.`,
  takenOut: (revision, tags, more) =>
    `Taken out since revision ${revision}: ${tags}${more > 0 ? ` and ${more} more` : ''}: strike old marks out.`,
};

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
