import type { Assignment, ColumnProfile } from '../../generated/column-profile.js';
import type { Observation } from '../../model/observation.js';
import {
  type ColumnField,
  columnNumber,
  HeightReference,
  isAxisField,
  isLengthField,
} from '../../model/table-profile.js';

/** What is wrong in a column profile beyond what its JSON Schema can say. */
export interface ProfileFault {
  /** JSON Pointer into the profile. */
  member: string;
  /** What is wrong, as a plain sentence. */
  problem: string;
  /** Absent where nothing can be read with the profile. */
  severity?: 'warning';
}

/** The finding about a fault; its place is the pointer into the profile. */
export function profileUnfit({ member, problem, severity }: ProfileFault): Observation {
  const at = { pointer: member };
  return { rule: 'profile-unfit', at, data: { member, problem }, cause: problem, ...(severity && { severity }) };
}

/** Lists what is wrong in a profile that holds to its schema; empty where a table can be read with it. */
export function checkProfile(profile: ColumnProfile): ProfileFault[] {
  return [
    ...checkTable(profile),
    ...checkColumns(profile),
    ...checkFields(profile),
    ...checkGiven(profile, 'trade', 'trade'),
    ...checkGiven(profile, 'holeType', 'hole type'),
    ...checkHeight(profile),
    ...checkLayoutMembers(profile),
  ];
}

/** The converter writes these members itself. */
function checkLayoutMembers({ layout = {} }: ColumnProfile): ProfileFault[] {
  return ['ahx', 'kind', 'holes']
    .filter((name) => Object.hasOwn(layout, name))
    .map((name) => ({ member: `/layout/${name}`, problem: `The layout of a profile has no member "${name}".` }));
}

function checkTable(profile: ColumnProfile): ProfileFault[] {
  const faults: ProfileFault[] = [];
  const { table, rows } = profile;
  if (table?.decimal === 'comma' && (table.separator ?? 'comma') === 'comma') {
    faults.push({ member: '/table/decimal', problem: 'The comma cannot be decimal sign and separator at once.' });
  }
  if (table?.header === false) {
    for (const [member, key] of columnKeys(profile)) {
      if (columnNumber(key) !== undefined) continue;
      faults.push({ member, problem: `Without a header the column "${key}" must be given by number, such as #1.` });
    }
  }
  if (rows !== undefined && rows.keep === undefined && rows.drop === undefined) {
    faults.push({ member: '/rows', problem: 'The row filter keeps and drops nothing.', severity: 'warning' });
  }
  return faults;
}

function columnKeys(profile: ColumnProfile): [string, string][] {
  const keys = profile.columns.map(({ column }, index): [string, string] => [`/columns/${index}/column`, column]);
  if (profile.rows !== undefined) keys.push(['/rows/column', profile.rows.column]);
  if (profile.codes !== undefined) keys.push(['/codes/column', profile.codes.column]);
  return keys;
}

function checkColumns(profile: ColumnProfile): ProfileFault[] {
  const faults: ProfileFault[] = [];
  const seen = new Map<ColumnField, string>();
  profile.columns.forEach(({ column, field, unit, map }, index) => {
    const member = `/columns/${index}`;
    const first = seen.get(field);
    if (first !== undefined) {
      faults.push({ member, problem: `The columns "${first}" and "${column}" are both ${field}.` });
    }
    seen.set(field, column);
    const isNumber = isLengthField(field) || isAxisField(field);
    if (isLengthField(field) && unit === undefined) {
      faults.push({ member, problem: `The column "${column}" is a length (${field}) and has no unit.` });
    }
    if (!isLengthField(field) && unit !== undefined) {
      const problem = `The column "${column}" (${field}) is no length; its unit means nothing.`;
      faults.push({ member: `${member}/unit`, problem, severity: 'warning' });
    }
    if (isNumber && map !== undefined) {
      faults.push({
        member: `${member}/map`,
        problem: `The column "${column}" (${field}) is a number and cannot have a map.`,
      });
    }
  });
  return faults;
}

function checkFields(profile: ColumnProfile): ProfileFault[] {
  const fields = new Set(profile.columns.map(({ field }) => field));
  const faults: ProfileFault[] = [];
  for (const field of ['id', 'x', 'y'] as const) {
    if (!fields.has(field)) faults.push({ member: '/columns', problem: `No column is the ${field}.` });
  }
  const axis = (['axis.x', 'axis.y', 'axis.z'] as const).filter((field) => !fields.has(field));
  if (axis.length === 1 || axis.length === 2) {
    faults.push({ member: '/columns', problem: `The axis has no column for ${axis.join(' and ')}.` });
  }
  return faults;
}

/** Every hole needs the member: from a column, from each code, or from the constants. */
function checkGiven(profile: ColumnProfile, name: 'trade' | 'holeType', words: string): ProfileFault[] {
  if (profile.constants?.[name] !== undefined || profile.columns.some(({ field }) => field === name)) return [];
  if (profile.codes === undefined) return [{ member: '', problem: `Nothing gives the ${words} of a hole.` }];
  const without = Object.entries(profile.codes.map).filter(([, assignment]) => assignment[name] === undefined);
  return without.map(([code]) => ({
    member: `/codes/map/${code.replaceAll('~', '~0').replaceAll('/', '~1')}`,
    problem: `Nothing gives the ${words} of a hole with code "${code}".`,
  }));
}

/** Heights from a level need the level, and its reference height in the layout of the profile. */
function checkHeight(profile: ColumnProfile): ProfileFault[] {
  const reference = new HeightReference(profile);
  const column = profile.columns.find(({ field }) => field === 'level');
  if (reference.member === undefined || !profile.columns.some(({ field }) => field === 'z')) return [];
  const given: [string, Assignment][] = [
    ['/constants', profile.constants ?? {}],
    ...Object.values(profile.codes?.map ?? {}).map((assignment): [string, Assignment] => ['/codes/map', assignment]),
    ...Object.values(column?.map ?? {}).map((level): [string, Assignment] => ['/columns', { level }]),
  ];
  const levels = new Map<string, string>();
  for (const [member, { level }] of given) if (level !== undefined) levels.set(level, member);
  if (levels.size === 0 && column === undefined) {
    return [{ member: '/height', problem: `Heights from ${reference.kind} need a level, and nothing gives one.` }];
  }
  const faults: ProfileFault[] = [];
  for (const [level, member] of levels) {
    if (reference.knows(level)) continue;
    const problem = `Heights from ${reference.kind} need ${levelExpected(reference)}; "${level}" is none.`;
    faults.push({ member, problem });
  }
  return faults;
}

/** What the level of a hole must be where heights are measured from it, in words that follow "must be". */
export function levelExpected(reference: HeightReference): string {
  const held = reference.member === 'soffits' ? 'exactly one height in soffits' : reference.member;
  return `a level with ${held} in the layout of the profile`;
}
