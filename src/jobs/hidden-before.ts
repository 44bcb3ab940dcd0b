import { renamed } from '../edit/renamed.js';
import { collections } from '../generated/schema-tables.js';
import type { Finding } from '../generated/report.js';
import { type FixOperation, tidyId } from '../model/fix.js';
import { fromPointer, toPointer } from '../read/locate.js';
import { ruleOf } from './findings.js';

const isCollection = new Set<string>(collections);
/** Stages that judge all records. */
const EARLY: ReadonlySet<string> = new Set(['bytes', 'JSON', 'schema']);
/** Rules of the stage schema that need a sound header. */
const AFTER_ALL: ReadonlySet<string> = new Set(['required-extension-unknown', 'unsupported-version']);
/** Rules of the stage schema that judge a value by all its parts, which have to be sound for it. */
const OF_PARTS: ReadonlySet<string> = new Set(['out-of-range', 'wrong-count']);

/**
 * Whether an error that is there after a patch could not be seen before it.
 *
 * Hidden is one of a later stage where a record that its rule reads was broken; one of a value of which a part was
 * at fault; all in a collection, or in a document, whose name or kind was wrong; and all in the layout of a column
 * profile that was broken otherwise. What an id brings that the patch has written is not hidden.
 *
 * @param kind of the document
 * @param errors those of the form of the file, before
 * @param moved new pointers of renamed members by old ones
 */
export function hiddenBefore(
  kind: string | undefined,
  errors: readonly Finding[],
  patch: readonly FixOperation[],
  moved: ReadonlyMap<string, string>,
): (finding: Finding) => boolean {
  const placeOf = placesIn(kind);
  const broken = new Set(errors.map(({ place }) => placeOf(place.pointer).record));
  const brokenIn = new Set(errors.map(({ place }) => placeOf(place.pointer).collection));
  const faultyParts = new Set(errors.flatMap(({ place }) => holdersOf(renamed(place.pointer ?? '', moved))));
  const replaced = patch.flatMap((one) => (one.op === 'replace' ? [{ ...one, path: renamed(one.path, moved) }] : []));
  const written: Written = {
    paths: new Set(replaced.map(({ path }) => path)),
    ids: new Set(replaced.flatMap(({ path, value }) => (isId(path) ? [`${fromPointer(path)[0]} ${value}`] : []))),
    renamed: new Set(moved.values()),
  };
  const isOpened = kind === 'unknown' || patch.some(({ path }) => placeOf(path).isOfRoot);
  return (finding) => {
    if (isOpened) return true;
    const { pointer = '' } = finding.place;
    const { record } = placeOf(pointer);
    if (record !== OUTSIDE && broken.has(OUTSIDE)) return true;
    if (EARLY.has(ruleOf(finding.rule).stage) && !AFTER_ALL.has(finding.rule))
      return OF_PARTS.has(finding.rule) && faultyParts.has(pointer);
    if (isOfNewId(finding, written)) return false;
    return broken.has(record) || alsoRead(finding).some((name) => brokenIn.has(name));
  };
}

/** What a patch has put in place of something else. */
interface Written {
  paths: ReadonlySet<string>;
  /** Ids of records, each behind the name of its collection. */
  ids: ReadonlySet<string>;
  /** Members under their new names: what they hold was not seen before. */
  renamed: ReadonlySet<string>;
}

/** Whether a rule speaks of an id that the patch has written, or of the one that stood there before. */
function isOfNewId({ rule, place: { pointer = '' }, data }: Finding, { paths, ids, renamed }: Written): boolean {
  if (rule === 'duplicate-id') return paths.has(pointer) || paths.has(`${data.first}/id`);
  if (rule !== 'unknown-reference') return false;
  const [id, tidy] = [String(data.id), tidyId(String(data.id))];
  if (tidy === id || !ids.has(`${data.target} ${tidy}`)) return false;
  return ![pointer, ...holdersOf(pointer)].some((at) => renamed.has(at));
}

function isId(pointer: string): boolean {
  const tokens = fromPointer(pointer);
  return tokens.length === 3 && tokens[2] === 'id';
}

/** The collections whose records a rule reads beside the one that it speaks of. */
function alsoRead({ rule, data }: Finding): readonly string[] {
  if (rule === 'duplicate-id') return [String(data.collection)];
  if (rule === 'unknown-reference') return [String(data.target)];
  return rule === 'pattern-count' ? ['holes'] : [];
}

/** What a pointer leads into. */
interface Where {
  /** Of a layout: a record of a collection, or the members of the root that are none. */
  record: string;
  collection: string | undefined;
  /** Whether it leads to a member of the root that decides whether anything is looked at below it. */
  isOfRoot: boolean;
}

/** What a column profile says besides its layout, which is read only where this is sound. */
const OUTSIDE = 'outside the layout';

function placesIn(kind: string | undefined): (pointer: string | undefined) => Where {
  if (kind === 'layout') return (pointer = '') => inLayout(fromPointer(pointer));
  return (pointer = '') => {
    const [first, ...rest] = fromPointer(pointer);
    if (kind === 'column-profile' && first === 'layout' && rest.length > 0) return inLayout(rest);
    return { record: kind === 'column-profile' ? OUTSIDE : '', collection: undefined, isOfRoot: false };
  };
}

function inLayout([name, index, ...rest]: readonly string[]): Where {
  const isRecord = isCollection.has(name) && index !== undefined;
  const isOfRoot =
    index === undefined && rest.length === 0 && (name === 'kind' || name === 'ahx' || isCollection.has(name));
  return { record: isRecord ? `${name} ${index}` : '', collection: isRecord ? name : undefined, isOfRoot };
}

/** Pointers of all that holds the value at a pointer. */
function holdersOf(pointer: string): string[] {
  const tokens = fromPointer(pointer);
  return tokens.map((_, length) => toPointer(tokens.slice(0, length)));
}
