import type { Area, KeepOut, Party } from '../../generated/layout.js';
import { printable } from '../../model/printable.js';
import { checkLimit } from './check-limit.js';
import type { SheetContext } from './sheet-context.js';
import type { SheetSubject } from './sheet-head.js';
import { sheetKeys } from './sheet-keys.js';
import { heightsInWords } from './heights-in-words.js';
import { nearBores } from './near-bores.js';
import { oneLine } from './one-line.js';
import type { SheetRow } from './sheet-row.js';

/** All that a sheet says in sentences besides head, plan and list. Printable. */
export interface SheetTexts {
  readonly moves: readonly string[];
  readonly holds: string;
  readonly conditions: readonly string[];
  /** The limit, and how it was found. */
  readonly checkLimit: readonly [string, string];
  readonly substrates: readonly string[];
  readonly symbols: readonly string[];
  /** What stands above the no-drill zones, or in place of them. */
  readonly noDrillHead: string;
  readonly noDrill: readonly string[];
  readonly bores: readonly string[];
  readonly findings: readonly string[];
  /** What differs from the revision before; empty where none was given. */
  readonly changes: readonly string[];
  readonly heights: readonly string[];
  /** What signs, limits and boxes of the list mean. */
  readonly reading: string;
  readonly call: readonly string[];
  readonly order: string;
  readonly leftOut: readonly string[];
}

export function sheetTexts(rows: readonly SheetRow[], subject: SheetSubject, context: SheetContext): SheetTexts {
  const { words, lengths } = context;
  const keys = sheetKeys(rows);
  const zones = noDrillZones(rows, context);
  const near = lengths.distance(context.nearMm);
  return {
    moves: keys.moves,
    holds: words.noHolds,
    conditions: conditionsOf(rows, subject, context),
    checkLimit: checkLimitInWords(rows, context),
    substrates: keys.substrates,
    symbols: keys.symbols,
    noDrillHead: zones.length === 0 ? words.noDrillNone(near) : words.noDrillHead(near),
    noDrill: zones,
    bores: boresOf(rows, context),
    findings: context.findings.ofSheet(rows),
    changes: context.changes?.ofSheet(rows) ?? [],
    heights: heightsInWords(rows, context),
    reading: rows.some(({ findings, change }) => findings ?? change)
      ? `${words.signs} ${words.reading}`
      : words.reading,
    call: callsOf(context),
    order: `${orderOf(subject, context)} ${words.lengths(words.units[lengths.unit])}`,
    leftOut: [
      ...(subject.notToDrill > 0 ? [words.castIn(subject.notToDrill)] : []),
      ...(subject.unknown > 0 ? [words.broken(subject.unknown)] : []),
    ],
  };
}

export function checkLimitInWords(
  rows: readonly SheetRow[],
  { words, lengths }: SheetContext,
): readonly [limit: string, why: string] {
  const limit = checkLimit(rows.map(({ hole }) => hole));
  if (limit === undefined) return words.noCheckLimit;
  return [lengths.atMost(limit.limitMm), words.checkLimit(lengths.atMost(limit.toleranceMm))];
}

function orderOf({ isOrderGiven, isRestInRows }: SheetSubject, { words, records }: SheetContext): string {
  if (isOrderGiven) return isRestInRows ? words.orderGivenFirst : words.orderGiven;
  const hasNorth = records.header.frame.projectNorthDeg !== undefined;
  return words.orderByRows(hasNorth ? 'N' : '+y', hasNorth ? 'S' : '−y');
}

/** Keep-outs near the holes, the nearest first. */
function noDrillZones(rows: readonly SheetRow[], context: SheetContext): string[] {
  const nearest = new Map<number, { distanceMm: number; number: number }>();
  for (const { hole, number } of rows) {
    for (const { index, distanceMm } of context.keepOutsNear(hole)) {
      const known = nearest.get(index);
      if (known === undefined || distanceMm < known.distanceMm) nearest.set(index, { distanceMm, number });
    }
  }
  return [...nearest]
    .sort(([a, one], [b, other]) => one.distanceMm - other.distanceMm || a - b)
    .map(([index, at]) => zoneText(context.keepOuts[index], at, context));
}

function zoneText(
  { id, name, kind, standoff, positionTolerance, knownFrom, source }: KeepOut,
  { distanceMm, number }: { distanceMm: number; number: number },
  { words, lengths, records }: SheetContext,
): string {
  const document = source === undefined ? [] : [records.sources.get(source)?.id ?? source];
  return words.keepOut({
    name: printable(name ?? id),
    kind: words.keepOuts[kind],
    standoff: lengths.size(standoff),
    off: positionTolerance === undefined ? undefined : lengths.size(positionTolerance),
    from: printable([words.knownFrom[knownFrom], ...document].join(' ')),
    number,
    distance: lengths.atMost(distanceMm),
  });
}

/** Existing bores near the holes. */
function boresOf(rows: readonly SheetRow[], { bores, nearMm, lengths, words }: SheetContext): string[] {
  const near = nearBores(rows, bores, nearMm);
  const shown = near.slice(0, MOST_BORES).map(({ bore: { id, end, diameter, depth }, number, distanceMm }) =>
    words.bore({
      id: printable(id),
      end: words.boreEnds[end],
      diameter: diameter === undefined ? undefined : lengths.size(diameter),
      depth: depth === undefined ? undefined : lengths.size(depth),
      number,
      distance: lengths.atMost(distanceMm),
    }),
  );
  const rest = near.length - shown.length;
  return rest > 0 ? [...shown, words.moreBores(rest)] : shown;
}
const MOST_BORES = 4;

/** Kinds of areas that bear on work by themselves. */
const TELLING: ReadonlySet<string> = new Set(['access', 'closed', 'rated', 'clean', 'noise-hours']);

function conditionsOf(
  rows: readonly SheetRow[],
  { prerequisite }: SheetSubject,
  { records, words }: SheetContext,
): string[] {
  const ids = new Set(rows.map(({ hole }) => hole.hole.area));
  const areas = [...ids].flatMap((id) => (id === undefined ? [] : (records.areas.get(id) ?? [])));
  const tells = ({ condition, kinds, validFrom, validTo }: Area) =>
    condition !== undefined ||
    validFrom !== undefined ||
    validTo !== undefined ||
    kinds?.some((kind) => TELLING.has(kind));
  return [
    ...(prerequisite === undefined ? [] : [oneLine(prerequisite)]),
    ...areas.filter(tells).map(({ name, kinds = [], condition, validFrom, validTo }) => {
      const about = kinds.filter((kind) => TELLING.has(kind)).map((kind) => words.areaKinds[kind]);
      const head = about.length === 0 ? printable(name) : `${printable(name)} (${about.join(', ')})`;
      const rest = [words.validity(validFrom, validTo), condition === undefined ? '' : oneLine(condition)].filter(
        Boolean,
      );
      return rest.length === 0 ? head : `${head}: ${rest.join('; ')}`;
    }),
  ];
}

/** Roles in the order in which a crew is likely to need them. */
const ROLES: readonly Party['role'][] = [
  'foreman',
  'coordinator',
  'general-contractor',
  'engineer-of-record',
  'surveyor',
  'scanner',
  'trade-contractor',
  'quality',
  'inspector',
  'driller',
  'owner',
  'other',
];
const MOST_PARTIES = 8;

/** Those with a contact first. */
function callsOf({ records: { header }, words }: SheetContext): string[] {
  const parties = header.parties ?? [];
  if (parties.length === 0) return [words.noParties];
  const rank = ({ role, contact }: Party) => ROLES.indexOf(role) + (contact === undefined ? ROLES.length : 0);
  const sorted = [...parties].sort((a, b) => rank(a) - rank(b));
  const rest = sorted.length - MOST_PARTIES;
  const shown = sorted.slice(0, MOST_PARTIES);
  const nameOf = ({ firm, person }: Party) => printable(person === undefined ? firm : `${person}, ${firm}`);
  const without = shown.filter(({ contact }) => contact === undefined).map(nameOf);
  return [
    ...shown.flatMap((party) =>
      party.contact === undefined ? [] : [words.call(nameOf(party), words.roles[party.role], printable(party.contact))],
    ),
    ...(without.length > 0 ? [words.noContact(without.join(', '))] : []),
    ...(rest > 0 ? [words.moreParties(rest)] : []),
  ];
}
