import type { Place } from './schema-places.js';

/** An operation of a JSON Patch (RFC 6902); only these three are used. */
export type Operation = { op: 'add' | 'replace'; path: string; value: unknown } | { op: 'remove'; path: string };

/** A rule that says where a document breaks the schema. */
export type SchemaRule =
  | 'missing-member'
  | 'unknown-member'
  | 'wrong-type'
  | 'not-a-choice'
  | 'out-of-range'
  | 'wrong-count'
  | 'bad-text';

/** One change of a valid document: it stays valid, or breaks one rule at one place. */
export interface Variant {
  /** What is changed, unique for the place. */
  what: string;
  patch: Operation[];
  /** Absent where the document stays valid. */
  breaks?: { rule: SchemaRule; pointer: string };
}

/** Everything that the schema of a place says, broken one thing at a time; limits also met exactly. */
export function variantsOf(place: Place, isFirstOfDefinition: boolean, samples: readonly Place[]): Variant[] {
  return [
    ...members(place, samples),
    ...types(place),
    ...choices(place),
    ...ranges(place),
    ...counts(place),
    ...texts(place, isFirstOfDefinition),
  ];
}

function replaced({ pointer }: Place, what: string, value: unknown, rule?: SchemaRule): Variant {
  return {
    what,
    patch: [{ op: 'replace', path: pointer, value }],
    ...(rule === undefined ? {} : { breaks: { rule, pointer } }),
  };
}

function members(place: Place, samples: readonly Place[]): Variant[] {
  const { schema, pointer, value } = place;
  if (schema.type !== 'object') return [];
  const present = Object.keys(value as object);
  const variants: Variant[] = (schema.required ?? []).map((name) => ({
    what: `without ${name}`,
    patch: [{ op: 'remove', path: `${pointer}/${name}` }],
    breaks: { rule: 'missing-member', pointer },
  }));
  if (schema.additionalProperties === false) {
    const breaks = { rule: 'unknown-member', pointer: `${pointer}/notAMember` } as const;
    const isFull = schema.maxProperties === present.length;
    const patch: Operation[] = isFull ? [{ op: 'remove', path: `${pointer}/${present[0]}` }] : [];
    variants.push({
      what: 'with an unknown member',
      patch: [...patch, { op: 'add', path: `${pointer}/notAMember`, value: 1 }],
      breaks,
    });
  }
  if (schema.propertyNames?.pattern !== undefined) {
    variants.push({
      what: 'with a bad name',
      patch: [{ op: 'add', path: `${pointer}/no address`, value: 1 }],
      breaks: { rule: 'bad-text', pointer: `${pointer}/no address` },
    });
  }
  if (schema.minProperties !== undefined) variants.push(replaced(place, 'empty', {}, 'wrong-count'));
  if (schema.maxProperties === present.length) {
    const other = Object.keys(schema.properties ?? {}).find((name) => !present.includes(name));
    const sample = samples.find(({ member }) => member === `${place.member}/${other}`)?.value;
    const patch: Operation[] = [{ op: 'add', path: `${pointer}/${other}`, value: sample }];
    variants.push({ what: `with ${other} too`, patch, breaks: { rule: 'wrong-count', pointer } });
  }
  return variants;
}

const OTHER_TYPES = {
  object: [[], null],
  array: [{}],
  string: [7],
  number: ['1'],
  integer: ['1', 1.5],
  boolean: ['true'],
} as const;

function types(place: Place): Variant[] {
  // Of a root of another type nothing says which kind of document it is.
  if (place.schema.type === undefined || place.pointer === '') return [];
  return OTHER_TYPES[place.schema.type].map((value) =>
    replaced(place, `as ${JSON.stringify(value)}`, value, 'wrong-type'),
  );
}

function choices(place: Place): Variant[] {
  const { enum: values } = place.schema;
  if (values === undefined) return [];
  const other = typeof values[0] === 'string' ? `${values[0]}x` : Math.max(...(values as number[])) + 1;
  return [replaced(place, 'no choice', other, 'not-a-choice')];
}

function ranges(place: Place): Variant[] {
  const { type, minimum, maximum, exclusiveMinimum, exclusiveMaximum } = place.schema;
  const just = (limit: number, direction: 1 | -1): number =>
    type === 'integer' ? limit + direction : neighbour(limit, direction);
  const variants: Variant[] = [];
  for (const [limit, outward] of [
    [minimum, -1],
    [maximum, 1],
  ] as const) {
    if (limit === undefined) continue;
    variants.push(replaced(place, `beyond ${limit}`, just(limit, outward), 'out-of-range'));
    variants.push(replaced(place, `at ${limit}`, limit));
  }
  for (const [limit, outward] of [
    [exclusiveMinimum, -1],
    [exclusiveMaximum, 1],
  ] as const) {
    if (limit === undefined) continue;
    variants.push(replaced(place, `at ${limit}`, limit, 'out-of-range'));
    variants.push(replaced(place, `within ${limit}`, just(limit, outward === 1 ? -1 : 1)));
  }
  return variants;
}

/** The next double; beside zero a millionth, since tools may well read the smallest double as zero. */
function neighbour(limit: number, direction: 1 | -1): number {
  if (limit === 0) return direction * 1e-6;
  const bits = new BigInt64Array(1);
  const number = new Float64Array(bits.buffer);
  number[0] = limit;
  bits[0] += limit > 0 === direction > 0 ? 1n : -1n;
  return number[0];
}

function counts(place: Place): Variant[] {
  const { minItems, maxItems } = place.schema;
  if (!Array.isArray(place.value)) return [];
  const elements: unknown[] = place.value;
  const filled = (count: number): unknown[] =>
    Array.from({ length: count }, (_, index) => elements[Math.min(index, elements.length - 1)]);
  const variants: Variant[] = [];
  if (minItems !== undefined) variants.push(replaced(place, 'one too few', filled(minItems - 1), 'wrong-count'));
  if (maxItems !== undefined) variants.push(replaced(place, 'one too many', filled(maxItems + 1), 'wrong-count'));
  if (minItems !== undefined && maxItems !== undefined && minItems < maxItems) {
    variants.push(replaced(place, 'fewest', filled(minItems)), replaced(place, 'most', filled(maxItems)));
  }
  return variants;
}

function texts(place: Place, isFirstOfDefinition: boolean): Variant[] {
  const { pattern, minLength, maxLength, enum: values } = place.schema;
  if (typeof place.value !== 'string' || values !== undefined) return [];
  const { value } = place;
  const form = new RegExp(pattern ?? '', 'u');
  const broken = [`${value}\n`, `${value} `, ` ${value}`, `${value}\u0007`, `x${value}`].filter((t) => !form.test(t));
  const tooShort = minLength === undefined ? [] : [''];
  // Signs outside the basic plane are two UTF-16 units each: lengths are counted in code points.
  const longest = maxLength === undefined ? [] : [`${value}${'\u{1F529}'.repeat(maxLength - [...value].length)}`];
  const tooLong = longest.map((text) => `${text}x`);
  const bad = [...broken, ...tooShort, ...tooLong];
  const variants = (isFirstOfDefinition ? bad : bad.slice(0, 1)).map((text, index) =>
    replaced(place, `bad text ${index + 1}`, text, 'bad-text'),
  );
  const isFree = isFirstOfDefinition && !place.isReference;
  return isFree
    ? [...variants, ...longest.filter((text) => form.test(text)).map((text) => replaced(place, 'longest', text))]
    : variants;
}
