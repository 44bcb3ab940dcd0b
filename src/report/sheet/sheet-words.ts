import type { Area, HoleType, KeepOut, Party, Substrate } from '../../generated/layout.js';
import { CAUTION } from '../../model/caution.js';

/** How holes go into the concrete. */
export type DrillDirection = 'up' | 'down' | 'level' | 'slanting' | 'unknown';

/** What a crew may shift, lengths as they are read. */
export interface AllowanceParts {
  readonly along: string;
  readonly across: string;
  /** Where the run goes, such as `E–W`; absent: not known. */
  readonly run?: string;
  readonly isTogether: boolean;
  readonly ask: 'ask-first' | 'tell-after';
}

/** All words on a crew sheet; other languages give their own. Texts that are handed in are printable, lengths are as the project reads them. */
export interface SheetWords {
  /** BCP 47 tag. */
  readonly language: string;
  readonly kinds: Readonly<Record<'package' | 'area' | 'level', string>>;
  readonly revision: string;
  supersedes(label: string | undefined): string;
  sheetOf(number: number, count: number): string;
  date(day: string): string;
  readonly noDate: string;
  issued(day: string): string;
  crew(name: string): string;
  lengths(unit: string): string;
  readonly units: Readonly<Record<'ft-in' | 'ft' | 'in' | 'mm' | 'm', string>>;
  readonly labels: {
    readonly move: string;
    readonly holds: string;
    readonly conditions: string;
    readonly checkLimit: string;
    readonly substrates: string;
    readonly symbols: string;
    readonly noDrill: string;
    readonly call: string;
    readonly control: string;
    readonly order: string;
    readonly caution: string;
    readonly leftOut: string;
  };
  /** A head with the unit of what stands below it. */
  withUnit(head: string, unit: string | undefined): string;
  /** Heads of the list; the boxes are pairs, one above the other. */
  readonly heads: Readonly<Record<'number' | 'tag' | 'symbol' | 'bit' | 'depth' | 'grid' | 'substrate', string>>;
  readonly boxes: readonly (readonly [upper: string, lower: string])[];
  readonly seenFromAbove: string;
  readonly planScale: (name: string) => string;
  readonly keyPlan: string;
  readonly noOutline: string;
  readonly drilled: Readonly<Record<DrillDirection, string>>;
  readonly noHolds: string;
  readonly areaKinds: Readonly<Record<NonNullable<Area['kinds']>[number], string>>;
  allowance(parts: AllowanceParts): string;
  readonly noAllowance: string;
  readonly noShift: string;
  /** How the check limit was found. */
  checkLimit(tolerance: string): string;
  /** In place of the check limit, and why. */
  readonly noCheckLimit: readonly [string, string];
  readonly checkRule: string;
  controlHead(frame: string, unit: string | undefined): string;
  readonly noControl: string;
  readonly noHeight: string;
  readonly checkPoint: string;
  moreControl(count: number): string;
  readonly core: string;
  readonly through: string;
  readonly noDepth: string;
  readonly noDepthTolerance: string;
  readonly noGrid: string;
  readonly noSubstrate: string;
  readonly substrates: Readonly<Record<Substrate['kind'], string>>;
  readonly flutes: Readonly<Record<NonNullable<HoleType['flutes']>['in'], string>>;
  finish(kind: string, thickness: string): string;
  throughNote(level: string | undefined, protectedBy: string | undefined, protection: string | undefined): string;
  firestop(reference: string): string;
  slantNote(angleDeg: number): string;
  noDrillHead(distance: string): string;
  noDrillNone(distance: string): string;
  readonly keepOuts: Readonly<Record<KeepOut['kind'], string>>;
  readonly knownFrom: Readonly<Record<KeepOut['knownFrom'], string>>;
  keepOut(parts: {
    name: string;
    kind: string;
    standoff: string;
    off: string | undefined;
    from: string;
    number: number;
    distance: string;
  }): string;
  moreKeepOuts(count: number): string;
  readonly roles: Readonly<Record<Party['role'], string>>;
  call(name: string, role: string, contact: string | undefined): string;
  readonly noParties: string;
  moreParties(count: number): string;
  readonly orderGiven: string;
  orderByRows(depth: string, from: string, to: string): string;
  castIn(count: number): string;
  broken(count: number): string;
  readonly cut: string;
  labelsLeftOut(count: number): string;
  shapesLeftOut(count: number): string;
  noSymbol(trade: string): string;
  symbol(trade: string, mark: string): string;
  validity(from: string | undefined, to: string | undefined): string;
  readonly listHead: string;
  readonly caution: string;
}

const s = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

export const SHEET_WORDS: SheetWords = {
  language: 'en',
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
    const way = `${along} along the run (${run ?? 'direction not given'}), ${across} across${isTogether ? ', whole group together' : ''}`;
    return ask === 'tell-after'
      ? `may shift ${way}, tell the office after; otherwise ask.`
      : `ask before any shift; at most ${way}.`;
  },
  noAllowance: 'no allowance given: ask before any shift.',
  noShift: 'no shift: ask.',
  checkLimit: (tolerance) => `half of ${tolerance}, the tightest position tolerance here.`,
  noCheckLimit: ['none', 'no position tolerance is given here, ask.'],
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
  call: (name, role, contact) => `${name} (${role}): ${contact ?? 'no contact given'}.`,
  noParties: 'nobody is named in the layout: ask the foreman.',
  moreParties: (count) => `${s(count, 'more party', 'more parties')} in the layout.`,
  orderGiven: 'as the package lists them.',
  orderByRows: (depth, from, to) => `rows of ${depth} from ${from} to ${to}, to and fro; groups together.`,
  castIn: (count) => `${s(count, 'cast-in or existing hole')}: nothing to drill there.`,
  broken: (count) => `${s(count, 'hole')} of the package that the layout does not have.`,
  cut: 'Texts that end in … are cut; the layout has them whole.',
  labelsLeftOut: (count) => `${s(count, 'label')} of the plan for want of room.`,
  shapesLeftOut: (count) =>
    `${s(count, 'outline or zone', 'outlines or zones')} of the plan beyond the most that are drawn.`,
  noSymbol: (trade) => `circle: ${trade}, no symbol given`,
  symbol: (trade, mark) => `${mark}: ${trade}`,
  validity: (from, to) =>
    [from === undefined ? '' : `from ${from}`, to === undefined ? '' : `until ${to}`].filter(Boolean).join(' '),
  listHead: 'The lists as text',
  caution: CAUTION,
};
