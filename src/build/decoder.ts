import { holeNumbers, holeReferences } from '../model/hole-row.js';
import { GENERATED_NOTE, type GeneratedFiles } from './generator.js';
import { holeShapeFiles } from './hole-shape.js';
import { definitionName, readSchemas, referenceOf, type Schema } from './schema-source.js';

/**
 * The decoder of a hole: from the bytes of a record straight into a row of columns.
 *
 * It takes exactly the records that are plain JSON, valid by the schema and made of forms that it knows;
 * for all others it returns -1 and the scanner and the validator look at them. So it can be fast without
 * a word about errors, and it can never let a fault through that the validator would name.
 */
export function decoderFiles(root: string): GeneratedFiles {
  const { documents, shared } = readSchemas(root);
  const writer = new DecoderWriter({ ...shared.$defs, ...documents.layout.$defs });
  const body = writer.object('decodeHole', documents.layout.$defs?.hole as Schema, '');
  const head = [
    GENERATED_NOTE.trimEnd(),
    "import type { HoleRow } from '../model/hole-row.js';",
    "import { idEnd, labelEnd, labelHash, numberEnd, numberRead } from '../read/lexemes.js';",
    "import { blanks } from '../read/scan.js';",
    '',
  ];
  const decoder = `${[...head, ...writer.functions, body].join('\n')}\n`;
  return { 'src/generated/decode-hole.ts': decoder, ...holeShapeFiles(root) };
}

/** In a minified text the comparison is all there is to do; the loop stands elsewhere to keep the decoder small. */
const SKIP = 'c = b[p]; if (c <= 32) { p = blanks(b, p); c = b[p]; }';

/** Writes one function for each closed object that it meets. */
class DecoderWriter {
  readonly functions: string[] = [];

  constructor(private readonly definitions: Record<string, Schema>) {}

  /** A function that decodes the object at `p` and returns the position behind it, or -1. */
  object(name: string, schema: Schema, path: string): string {
    const members = Object.entries(schema.properties ?? {});
    if (members.length > 30) throw new Error(`${name} has ${members.length} members; one bit each ends at 30`);
    const required = (schema.required ?? []).reduce(
      (mask, key) => mask | (1 << members.findIndex(([k]) => k === key)),
      0,
    );
    const least = schema.minProperties ?? 0;
    if (least > 1 || schema.maxProperties !== undefined)
      throw new Error(`${name} has a count of members that no mask tells`);
    const values = members.flatMap(([key, part], k) => [
      `      case ${k}: {`,
      ...this.value(part, path === '' ? key : `${path}.${key}`).map((line) => `        ${line}`),
      '        break;',
      '      }',
    ]);
    const rowName = path === '' || values.some((line) => /\brow\b/.test(line)) ? 'row' : '_row';
    const lines = [
      `/** Decodes the object at \`p\`; returns the position behind it, or -1 to have it looked at with care. */`,
      `${path === '' ? 'export ' : ''}function ${name}(b: Uint8Array, p: number, ${rowName}: HoleRow): number {`,
      '  if (b[p] !== 123) return -1;',
      '  let c = 0; let seen = 0; let key = -1;',
      ...(path === '' ? this.clear() : []),
      `  p++; ${SKIP}`,
      '  for (;;) {',
      '    if (c !== 34) return -1;',
      ...this.keySwitch(members.map(([key]) => key)),
      '    if ((seen & (1 << key)) !== 0) return -1;',
      '    seen |= 1 << key;',
      `    ${SKIP}`,
      '    if (c !== 58) return -1;',
      `    p++; ${SKIP}`,
      '    switch (key) {',
      ...values,
      '    }',
      `    ${SKIP}`,
      '    p++;',
      '    if (c === 125) break;',
      '    if (c !== 44) return -1;',
      `    ${SKIP}`,
      '  }',
      `  return ${least === 1 ? 'seen !== 0 && ' : ''}(seen & ${required}) === ${required} ? p : -1;`,
      '}',
      '',
    ];
    return lines.join('\n');
  }

  private clear(): string[] {
    return [
      '  row.bytes = b; row.idStart = -1; row.tagHash = 0;',
      '  const n = row.numbers; const starts = row.refStarts;',
      `  ${holeNumbers.map((_, k) => `n[${k}] = NaN;`).join(' ')}`,
      `  ${holeReferences.map((_, k) => `starts[${k}] = -1;`).join(' ')}`,
    ];
  }

  /** Finds the member name at the quote `b[p]`; leaves `p` behind its closing quote. */
  private keySwitch(keys: string[]): string[] {
    const lines = ['    switch (b[p + 1]) {'];
    const firsts = [...new Set(keys.map((key) => key[0]))];
    for (const first of firsts) {
      lines.push(`      case ${first.charCodeAt(0)}:`);
      const group = keys.filter((key) => key[0] === first);
      group.forEach((key, n) => {
        const tests = [...key.slice(1), '"'].map((ch, k) => `b[p + ${k + 2}] === ${ch.charCodeAt(0)}`);
        lines.push(
          `        ${n > 0 ? 'else ' : ''}if (${tests.join(' && ')}) { key = ${keys.indexOf(key)}; p += ${key.length + 2}; }`,
        );
      });
      lines.push('        else return -1;', '        break;');
    }
    return [...lines, '      default: return -1;', '    }'];
  }

  /** Statements that read the value at `p`, `c` being its first byte, and leave `p` behind it. */
  private value(part: Schema, path: string): string[] {
    const reference = referenceOf(part);
    const name = reference === undefined ? undefined : definitionName(reference);
    if (name === 'id' || name?.endsWith('Ref') === true) return this.identifier(name, path);
    if (name === 'label' || name === 'text') return this.line(this.definitions[name].maxLength as number, path);
    if (name === 'ext') return ['return -1;'];
    const schema = this.resolve(part);
    if (schema.enum !== undefined) return this.choice(schema.enum as string[]);
    if (schema.type === 'number' || schema.type === 'integer') return this.number(schema, path);
    if (schema.type === 'boolean') return this.boolean();
    if (schema.type === 'array') return this.tuple(schema, path, name);
    if (schema.type === 'object' && schema.additionalProperties === false) {
      const functionName = `decode${path.split('.').map(capital).join('')}`;
      this.functions.push(this.object(functionName, schema, path));
      return [`p = ${functionName}(b, p, row);`, 'if (p < 0) return -1;'];
    }
    throw new Error(`no way to decode ${path}`);
  }

  private resolve(part: Schema): Schema {
    const reference = referenceOf(part);
    return reference === undefined ? part : this.resolve(this.definitions[definitionName(reference)]);
  }

  private identifier(name: string, path: string): string[] {
    const max = this.definitions.id.maxLength;
    const k = holeReferences.indexOf(path as never);
    if (name !== 'id' && k < 0) throw new Error(`${path} refers to a record but has no column`);
    const keep =
      path === 'id'
        ? 'row.idStart = p + 1; row.idEnd = end;'
        : k >= 0
          ? `row.refStarts[${k}] = p + 1; row.refEnds[${k}] = end;`
          : '';
    return [
      'if (c !== 34) return -1;',
      `const end = idEnd(b, p + 1, ${max});`,
      'if (end < 0) return -1;',
      keep,
      'p = end + 1;',
    ];
  }

  private line(max: number, path: string): string[] {
    return [
      'if (c !== 34) return -1;',
      `p = labelEnd(b, p + 1, ${max}) + 1;`,
      'if (p === 0) return -1;',
      ...(path === 'tag' ? ['row.tagHash = labelHash[0];'] : []),
    ];
  }

  private number(schema: Schema, path: string): string[] {
    const k = holeNumbers.indexOf(path as never);
    const tests = [
      schema.minimum === undefined ? '' : `value < ${schema.minimum}`,
      schema.maximum === undefined ? '' : `value > ${schema.maximum}`,
      schema.exclusiveMinimum === undefined ? '' : `value <= ${schema.exclusiveMinimum}`,
      schema.exclusiveMaximum === undefined ? '' : `value >= ${schema.exclusiveMaximum}`,
      schema.type === 'integer' ? 'value % 1 !== 0' : '',
    ].filter((test) => test !== '');
    return [
      'p = numberEnd(b, p);',
      'if (p < 0) return -1;',
      ...(tests.length > 0 || k >= 0 ? ['const value = numberRead[0];'] : []),
      ...(tests.length > 0 ? [`if (${tests.join(' || ')}) return -1;`] : []),
      ...(k >= 0 ? [`row.numbers[${k}] = value;`] : []),
    ];
  }

  private boolean(): string[] {
    const word = (text: string) => [...text].map((ch, k) => `b[p + ${k}] === ${ch.charCodeAt(0)}`).join(' && ');
    return [`if (${word('true')}) p += 4;`, `else if (${word('false')}) p += 5;`, 'else return -1;'];
  }

  private choice(values: string[]): string[] {
    const tests = values.map((value, n) => {
      const bytes = [...`"${value}"`].map((ch, k) => `b[p + ${k}] === ${ch.charCodeAt(0)}`).join(' && ');
      return `${n > 0 ? 'else ' : ''}if (${bytes}) p += ${value.length + 2};`;
    });
    return [...tests, 'else return -1;'];
  }

  /** A short array of numbers, such as a point. */
  private tuple(schema: Schema, path: string, name: string | undefined): string[] {
    const { minItems, maxItems } = schema;
    if (minItems === undefined || maxItems === undefined || maxItems > 4) throw new Error(`${path} is no tuple`);
    const lines = ['if (c !== 91) return -1;', `p++; ${SKIP}`];
    // What the schema has no word for is left to the careful way as well.
    if (name === 'vector3') lines.unshift('let part0 = 0; let part1 = 0; let part2 = 0;');
    if (name === 'limits') lines.unshift('let part0 = 0; let part1 = 0;');
    for (let k = 0; k < maxItems; k++) {
      const item = this.value(schema.items as Schema, `${path}.${k}`);
      if (name === 'vector3' || name === 'limits') item.push(`part${k} = numberRead[0];`);
      const body = [...(k > 0 ? [`p++; ${SKIP}`] : []), '{', ...item, '}', SKIP];
      const optional = k >= minItems;
      lines.push(
        ...(optional ? ['if (c === 44) {', ...body, '}'] : [...(k > 0 ? ['if (c !== 44) return -1;'] : []), ...body]),
      );
    }
    if (name === 'vector3') lines.push('if (part0 === 0 && part1 === 0 && part2 === 0) return -1;');
    if (name === 'limits') lines.push('if (part0 > part1) return -1;');
    return [...lines, 'if (c !== 93) return -1;', 'p++;'];
  }
}

function capital(text: string): string {
  return text[0].toUpperCase() + text.slice(1);
}
