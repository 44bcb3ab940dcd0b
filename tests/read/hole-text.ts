import fc from 'fast-check';

/** Stands for a byte that is no UTF-8 where it stands. */
const BAD_BYTE = '\ue000';

/** The bytes of a text. */
export function bytesOf(text: string): Uint8Array {
  const parts = text.split(BAD_BYTE).map((part) => [...new TextEncoder().encode(part)]);
  return Uint8Array.from(parts.flatMap((part, k) => (k === 0 ? part : [0xfc, ...part])));
}

const blank = fc.constantFrom('', '', '', ' ', '\n', '\t', '\r\n  ');
const plainText = fc.constantFrom(
  '"H-1"',
  '"h-1"',
  '"FP"',
  '"HT 1"',
  '"A/b\'c"',
  '"3/8\\" rod"',
  '"é"',
  '"10′-6″"',
  '"ß—漢"',
  `"${'x'.repeat(128)}"`,
);
const plainId = fc.oneof(
  { weight: 19, arbitrary: fc.constantFrom('"H-1"', '"h-1"', '"FP"', '"HT 1"', '"A/b\'c"', `"${'x'.repeat(128)}"`) },
  { weight: 1, arbitrary: plainText },
);
const oddText = fc.oneof(
  fc.constantFrom(
    '""',
    '" x"',
    '"x "',
    '"\\u0041"',
    '"3/8\\u0022"',
    '"\\u00e9\\u4E2D\\u2033"',
    '"\\u0020x"',
    '"x\\u00a0"',
    '"\\u007f"',
    '"\\u00zz"',
    '"\\u00"',
    '"a\\nb"',
    '"a\\/b"',
    '"e\\u0301"',
    '"e\u0301"',
    '"\u00a0x"',
    '"x\u2028"',
    '"x\u2028y"',
  ),
  fc.constantFrom(
    '"\\ud83d\\ude00"',
    '"\\ud83d"',
    '"\uffff"',
    '"\u007f"',
    '"\u0085"',
    `"${'x'.repeat(129)}"`,
    `"${'x'.repeat(257)}"`,
    `"${'👷'.repeat(128)}"`,
    `"${'x'.repeat(300)}"`,
    '"\\ud83d\\u0041"',
    '"\\ufdd0"',
    '"a\tb"',
    '"a\\tb"',
    `"T${BAD_BYTE}r${BAD_BYTE}"`,
    `"${BAD_BYTE}"`,
  ),
  fc.string({ unit: 'binary', maxLength: 6 }).map((text) => JSON.stringify(text)),
);
const coordinate = fc.oneof(
  fc.integer({ min: -100_000, max: 100_000 }).map((n) => String(n / 1000)),
  fc.constantFrom('0', '-0', '-0.5', '1.50', '0.000001', '123456789.012345', '9999999999', '10000000000'),
);
const plainLength = fc.oneof(
  fc.integer({ min: 1, max: 100_000 }).map((n) => String(n / 1000)),
  fc.constantFrom('0.5', '12.7', '10000000', '0.000001'),
);
const oddNumber = fc.oneof(
  fc.constantFrom(
    '1e3',
    '2.5E-1',
    '1e400',
    '1e-400',
    '01',
    '+1',
    '.5',
    '1.',
    '-',
    '10000000000.5',
    '0.1000000000000000055',
  ),
  fc.double().map(String),
  fc.integer().map((n) => `${n}00000000000000000001`),
);
const odd = fc.oneof(
  oddText,
  oddNumber,
  fc.constantFrom(
    'null',
    'true',
    'nul',
    '[]',
    '{}',
    '[1, 2]',
    '[0, 0, 0]',
    '[1,2,3,4]',
    '{ "a": 1 }',
    '[5, -5]',
    '[1 2]',
    '{"ask":"never"}',
  ),
);

const list = (...parts: fc.Arbitrary<string>[]) =>
  fc.tuple(blank, ...parts).map(([space, ...values]) => `[${space}${values.join(`${space},${space}`)}${space}]`);
/** An object of some of the members. */
const members = (given: Record<string, fc.Arbitrary<string>>) =>
  fc
    .tuple(
      blank,
      fc
        .subarray(Object.entries(given), { minLength: 1 })
        .chain((chosen) => fc.tuple(...chosen.map(([name, value]) => value.map((v) => `"${name}":${v}`)))),
    )
    .map(([space, parts]) => `{${space}${parts.join(`,${space}`)}${space}}`);
const limits = list(fc.constantFrom('-5', '-0.5', '0'), fc.constantFrom('0', '0.5', '5'));
const tolerance = members({ radius: plainLength, along: limits, across: limits, height: limits });

const needed = {
  id: plainId,
  trade: plainId,
  holeType: plainId,
  point: fc.oneof(list(coordinate, coordinate), list(coordinate, coordinate, coordinate)),
};
const optional = {
  tag: plainText,
  substrate: plainId,
  level: plainId,
  area: plainId,
  group: plainId,
  role: plainText,
  axis: list(coordinate, coordinate, coordinate),
  diameter: plainLength,
  depth: plainLength,
  positionTolerance: tolerance,
  depthTolerance: limits,
  moveAllowance: fc
    .tuple(
      plainLength,
      fc.constantFrom('"ask-first"', '"tell-after"', '"ask"'),
      list(coordinate, coordinate, coordinate),
    )
    .map(
      ([length, ask, run]) => `{"along":${length},"across": ${length},"ask":${ask} ,"run":${run},"movesTogether":true}`,
    ),
  above: members({ level: plainId, protectedBy: plainId, protection: plainText, firestop: plainText }),
  replaces: plainId,
  origin: members({
    source: plainId,
    row: fc.constantFrom('1', '17', '17', '0'),
    element: plainText,
    code: plainText,
  }),
  note: plainText,
  ext: fc.constantFrom('{}', '{ "urn:example:a": [1, {}] }', '{ "a": 1 }'),
};

/** Values of members that are not as they should be, each in its own way, or are unusual. */
export const oddValues: Readonly<Record<string, readonly string[]>> = {
  id: [
    '7',
    'null',
    '""',
    '"H-1 "',
    '"\\u0041-1"',
    '"é"',
    '"e\u0301"',
    '"a\\nb"',
    `"${'x'.repeat(129)}"`,
    `"${'x'.repeat(300)}"`,
  ],
  tag: [
    'null',
    '""',
    '" x"',
    '"x\\u2003"',
    '"\\u2028x"',
    '"\\u0085"',
    '"a\\tb"',
    `"${'x'.repeat(257)}"`,
    `" ${'x'.repeat(257)}"`,
    `"${'👷'.repeat(257)}"`,
    '"\\ud83d"',
    '"\\ud83d\\u0041"',
    '"\\ud83d\\ude00"',
    '"\\ufdd0"',
    '"\uffff"',
    `"T${BAD_BYTE}r"`,
    `"T${BAD_BYTE}r${BAD_BYTE}"`,
    `"${BAD_BYTE}\\ud83d"`,
  ],
  trade: ['7', '"FP "', '"\\u0046P"', '"\\u0046P "', '"f\\/p"', `"F${BAD_BYTE}"`, `"${'x'.repeat(300)}"`],
  point: [
    '7',
    '[]',
    '[1]',
    '[1,2,3,4]',
    '[1,2,3,4,5,6,7,8,9]',
    '["1", null, 3]',
    '[1, "2"]',
    '[1, 2.00000000000000017, 3]',
    '[1.00000000000000017, 2.00000000000000017]',
    '[10000000001, -10000000001]',
    '[1e400, 2]',
    '[1e2, -2.5E-1]',
    '{"0":1,"1":2,"2":3}',
    '{"x":1,"y":2}',
    '{"x":1,"x":2}',
    '{"x":{"axis":[0,0,0]}}',
    '[{"id":"e\u0301"}, 2]',
    '[{"a":"e\u0301"}, 2]',
    '[[0,0,0],{"prism":{}}]',
  ],
  axis: ['[0,0,0]', '[0,-0,0.0]', '[0,0]', '[0,0,0,0]', '[0,0,"0"]', '[0,0,null]', '{"a":[0,0,0]}', '"up"'],
  diameter: [
    '-1',
    '0',
    '1e9',
    '10000001',
    '"12"',
    '12.70000000000000017',
    '1e400',
    '1.27e1',
    '[12]',
    'true',
    '{"run":[0,0,0]}',
  ],
  positionTolerance: [
    '5',
    '{}',
    '{"x":1}',
    '{"radius":-1}',
    '{"along":[5,-5]}',
    '{"across":[5,-5]}',
    '{"across":[5,-5,1]}',
    '{"across":[5]}',
    '{"across":[200000,-5]}',
    '{"height":["0",0]}',
    '{"radius":1,"radius":2}',
    '{"radius":1,"x":1,"x":2}',
    '{"id":"e\u0301"}',
  ],
  moveAllowance: [
    '{"along":5,"across":5}',
    '{"along":5,"ask":"tell-after"}',
    '{"along":5,"across":5,"ask":"never"}',
    '{"along":5,"across":5,"ask":"ask-f\\u0069rst"}',
    '{"along":[5,-5],"across":5,"ask":7}',
    '{"along":5,"across":5,"ask":"ask-first","run":[0,0,0]}',
    '{"along":5,"across":5,"ask":"ask-first","movesTogether":1}',
    '{"along":5,"across":5,"aks":"ask-first"}',
  ],
  origin: [
    '{}',
    '[]',
    '{"source":" D"}',
    '{"source":"D","source":7}',
    '{"row":1.5}',
    '{"row":0}',
    '{"row":9007199254740992}',
    '{"rwo":1}',
  ],
  note: ['"a\\nb\\tc "', '"a\\u0007b"', '"\\u0085"', '"\\u007f"', '""', `"${'x'.repeat(10_001)}"`],
  ext: [
    '[]',
    '{"urn:x":{"a":[{"b":"\\ud800"}]}}',
    '{"urn:x":{"id":"e\u0301","axis":[0,0,0]}}',
    '{"urn:x":1,"urn:x":2}',
    '{"urn:x":{"a":{"b":1,"b":2}}}',
    '{"http://example.org/é":1}',
    '{"x":1}',
    '{":x":1}',
    '{"urn:":1}',
    '{"u n:x":1}',
    `{"urn:${'x'.repeat(1100)}":1}`,
    '{"urn:x":[[[[[[[[[1]]]]]]]]]}',
  ],
  diametre: [
    '12',
    '"12"',
    '1e400',
    '1.00000000000000017',
    '[0,0,0]',
    '{"id":"e\u0301"}',
    '{"a":{"a":1}}',
    `"${BAD_BYTE}"`,
  ],
  'Länge 2': ['12', '{"a":1,"b":{"a":2},"c":[{"a":1},{"a":2}]}'],
  run: ['[0,0,0]', '{"run":[0,0,0]}'],
};

/** Something odd in place of what a hole should have, or beside it. */
const oddity = fc.record({
  at: fc.nat(25),
  kind: fc.constantFrom('value', 'fitting', 'fitting', 'twice', 'unknown', 'escaped', 'missing'),
  value: odd,
});

/** The text of a hole: all that it needs, some of the rest, in any order, with up to so many oddities. */
export const holeText = (oddities: fc.Arbitrary<number>) =>
  oddities.chain((count) => fc.array(oddity, { minLength: count, maxLength: count })).chain(textWith);

const textWith = (found: readonly { at: number; kind: string; value: string }[]) =>
  fc
    .record({
      chosen: fc.subarray(Object.entries(optional)),
      order: fc.integer({ min: 0, max: 20 }),
      space: blank,
    })
    .chain(({ chosen, order, space }) => {
      const all = [...Object.entries(needed), ...chosen];
      return fc.tuple(...all.map(([, value]) => value)).map((values) => {
        const parts = all.map(([name], k): [string, string] => [`"${name}"`, values[k]]);
        const turned = [...parts.slice(order % parts.length), ...parts.slice(0, order % parts.length)];
        for (const oddity of found) if (turned.length > 0) change(turned, oddity);
        return `{${space}${turned.map(([name, value]) => `${name}${space}:${space}${value}`).join(`${space},${space}`)}${space}}`;
      });
    });

function change(parts: [string, string][], { at, kind, value }: { at: number; kind: string; value: string }): void {
  const k = at % parts.length;
  const [name, before] = parts[k];
  if (kind === 'value') parts[k] = [name, value];
  const fitting = oddValues[JSON.parse(name) as string] ?? oddValues.diameter;
  if (kind === 'fitting') parts[k] = [name, fitting[(at * 7) % fitting.length]];
  if (kind === 'twice') parts.splice(0, 0, [name, before]);
  if (kind === 'unknown') parts.splice(k, 0, [at % 2 === 0 ? '"diametre"' : '"Länge 2"', value]);
  if (kind === 'escaped') parts[k] = [`"\\u00${name.charCodeAt(1).toString(16)}${name.slice(2)}`, before];
  if (kind === 'missing') parts.splice(k, 1);
}
