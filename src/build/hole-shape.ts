import type { ShapeSource } from '../read/shape.js';
import { GENERATED_NOTE, type GeneratedFiles } from './generator.js';
import { definitionName, readSchemas, referenceOf, type Schema } from './schema-source.js';

/** More members than this have no bit each. */
const MOST_MEMBERS = 30;

/** What the schema says of a hole, as the careful decoder reads it. */
export function holeShapeFiles(root: string): GeneratedFiles {
  const { documents, shared } = readSchemas(root);
  const shapes = new ShapeWriter({ ...shared.$defs, ...documents.layout.$defs });
  const hole = shapes.shapeOf({ $ref: '#/$defs/hole' });
  const text = [
    GENERATED_NOTE.trimEnd(),
    '',
    '/** What the schema says of a hole and of the values inside it. */',
    `export const holeShape = ${JSON.stringify(hole, null, 2)} as const;`,
  ];
  return { 'src/generated/hole-shape.ts': `${text.join('\n')}\n` };
}

class ShapeWriter {
  constructor(private readonly definitions: Record<string, Schema>) {}

  shapeOf(part: Schema): ShapeSource {
    const reference = referenceOf(part);
    if (reference !== undefined) {
      const name = definitionName(reference);
      if (name === 'ext') return { kind: 'additions' };
      return this.shapeOf(this.definitions[name]);
    }
    if (part.enum !== undefined) return { kind: 'choice', choices: part.enum as string[] };
    if (part.type === 'string') return this.text(part);
    if (part.type === 'boolean') return { kind: 'boolean' };
    if (part.type === 'number' || part.type === 'integer') return this.number(part);
    return part.type === 'array' ? this.list(part) : this.object(part);
  }

  private number({ type, minimum, maximum, exclusiveMinimum, exclusiveMaximum }: Schema): ShapeSource {
    const isWhole = type === 'integer' ? true : undefined;
    return { kind: 'number', isWhole, minimum, maximum, exclusiveMinimum, exclusiveMaximum };
  }

  private list({ minItems, maxItems, items }: Schema): ShapeSource {
    if (minItems === undefined || maxItems === undefined || items === undefined)
      throw new Error('no way to judge a list without limits');
    return { kind: 'list', minItems, maxItems, item: this.shapeOf(items) };
  }

  private text(part: Schema): ShapeSource {
    const { id, label, text } = this.definitions;
    if (part.minLength !== 1 || (part.pattern !== id.pattern && part.pattern !== text.pattern))
      throw new Error(`no way to judge a text with the pattern ${part.pattern}`);
    if (id.pattern !== label.pattern) throw new Error('ids and labels are no longer texts of one kind');
    return { kind: 'text', isOneLine: part.pattern === id.pattern, maxLength: part.maxLength as number };
  }

  private object(part: Schema): ShapeSource {
    const members = Object.entries(part.properties ?? {});
    const isKnown = part.additionalProperties === false && (part.minProperties ?? 0) < 2;
    if (!isKnown || part.maxProperties !== undefined || members.length > MOST_MEMBERS)
      throw new Error(`no way to judge ${JSON.stringify(part).slice(0, 100)}`);
    return {
      kind: 'object',
      minProperties: part.minProperties ?? 0,
      required: part.required ?? [],
      members: Object.fromEntries(members.map(([name, member]) => [name, this.shapeOf(member)])),
    };
  }
}
