import type { PlanWords } from '../../draw/plan-words.js';
import type { GridDimensionWords } from '../../frame/grid-dimension-text.js';
import type { Phrases } from '../../model/language.js';
import type { Severity } from '../../model/observation.js';
import type { Area, Bore, Finish, HoleType, KeepOut, Party, Substrate } from '../../generated/layout.js';

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
  readonly plan: PlanWords;
  readonly grid: GridDimensionWords;
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
  /** Of the check, so that the sheet speaks of findings as the report does. */
  readonly phrases: Phrases;
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
    readonly findings: string;
    readonly changes: string;
    readonly height: string;
    readonly bores: string;
    readonly reading: string;
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
  /** Where a shift along and one across differ and no run is given. */
  readonly noRun: string;
  readonly anyDirection: string;
  /** A run that goes up and down. */
  readonly upright: string;
  /** A run by its angle, degrees anticlockwise from the x axis. */
  fromX(angleDeg: number): string;
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
  readonly finishes: Readonly<Record<Finish['kind'], string>>;
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
  call(party: string, role: string, contact: string): string;
  noContact(parties: string): string;
  readonly noParties: string;
  moreParties(count: number): string;
  readonly orderGiven: string;
  /** Where others follow those that the package lists. */
  readonly orderGivenFirst: string;
  orderByRows(from: string, to: string): string;
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
  /** Which way a run goes: N–S, then the next ones clockwise. */
  readonly compass: readonly [string, string, string, string];
  readonly notChecked: string;
  /** Before the message of an error. */
  readonly doNotDrill: string;
  finding(severity: Severity, message: string): string;
  /** A finding that stands at another hole, and is about this one too. */
  findingAtOther(hole: string, message: string): string;
  acceptedFinding(owner: string, until: string, message: string): string;
  moreGeneral(count: number): string;
  notKept(count: number): string;
  holesWithFindings(some: number, of: number): string;
  holesWithErrors(numbers: string): string;
  holesWithWarnings(numbers: string): string;
  holesAccepted(numbers: string): string;
  findingsNotShown(count: number): string;
  readonly checkedAlone: string;
  checkedWith(names: string): string;
  notLookedAt(names: string): string;
  otherHoles(count: number, trades: string): string;
  bore(parts: {
    id: string;
    end: string;
    diameter: string | undefined;
    depth: string | undefined;
    number: number;
    distance: string;
  }): string;
  readonly boreEnds: Readonly<Record<Bore['end'], string>>;
  moreBores(count: number): string;
  readonly heightAbove: {
    finishedFloor(level: string): string;
    structuralTop(level: string): string;
    datum(datum: string): string;
  };
  heightOfAll(height: string, above: string): string;
  heightOf(height: string, numbers: string): string;
  heightRange(least: string, most: string, above: string): string;
  /** @param numbers empty: all holes */
  heightAsFound(numbers: string): string;
  /** What the signs below a number mean. */
  readonly signs: string;
  /** What limits of depth and the boxes of the list mean. */
  readonly reading: string;
  /** Names of members of holes and definitions as people call them; others stand as they are. */
  readonly members: Readonly<Record<string, string>>;
  changed(revision: string, what: string): string;
  readonly changeNew: string;
  changeMoved(distance: string): string;
  changeRespecified(members: string): string;
  changeTag(from: string | undefined): string;
  changeRedefined(name: string, members: string): string;
  /** @param numbers empty: none */
  changesOfSheet(revision: string, numbers: string): string;
  takenOut(revision: string, tags: string, more: number): string;
}
