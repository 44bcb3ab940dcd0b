import { definitionName, referenceOf, type Schema } from './schema-source.js';

/** A value of a document beside the schema that judges it. */
export interface Place {
  /** The schema, references followed. */
  schema: Schema;
  /** Name of the last definition on the way to the schema; empty where there was none. */
  definition: string;
  /** Whether the value is the id of another record. */
  isReference: boolean;
  /** JSON Pointer of the value. */
  pointer: string;
  /** The pointer with `*` for indexes and free names: the same for all values of one member. */
  member: string;
  value: unknown;
}

/**
 * All values of a document with their schemas, in document order. Values that the schema does not
 * describe are left out.
 */
export function placesIn(bundle: Schema, document: unknown): Place[] {
  const places: Place[] = [];
  const visit = (node: Schema, value: unknown, pointer: string, member: string): void => {
    const { schema, definition, isReference } = follow(node, bundle);
    places.push({ schema, definition, isReference, pointer, member, value });
    if (Array.isArray(value)) {
      for (const [index, element] of value.entries()) {
        if (schema.items !== undefined) visit(schema.items, element, `${pointer}/${index}`, `${member}/*`);
      }
    } else if (typeof value === 'object' && value !== null) {
      for (const [name, inside] of Object.entries(value)) {
        const described = schema.properties?.[name];
        const free = typeof schema.additionalProperties === 'object' ? schema.additionalProperties : undefined;
        const step = `${pointer}/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`;
        if (described !== undefined) visit(described, inside, step, `${member}/${name}`);
        else if (free !== undefined) visit(free, inside, step, `${member}/*`);
      }
    }
  };
  visit(bundle, document, '', '');
  return places;
}

/** Paths of all members that the schema describes, in the form of `Place.member`. */
export function membersOf(bundle: Schema): string[] {
  const members: string[] = [];
  const visit = (node: Schema, member: string): void => {
    members.push(member);
    const { schema } = follow(node, bundle);
    for (const [name, part] of Object.entries(schema.properties ?? {})) visit(part, `${member}/${name}`);
    if (schema.items !== undefined) visit(schema.items, `${member}/*`);
    if (typeof schema.additionalProperties === 'object') visit(schema.additionalProperties, `${member}/*`);
  };
  visit(bundle, '');
  return members;
}

function follow(node: Schema, bundle: Schema): Pick<Place, 'schema' | 'definition' | 'isReference'> {
  let schema = node;
  let definition = '';
  let isReference = false;
  for (let reference = referenceOf(schema); reference !== undefined; reference = referenceOf(schema)) {
    definition = definitionName(reference);
    isReference ||= definition.endsWith('Ref');
    schema = bundle.$defs?.[definition] as Schema;
  }
  return { schema, definition, isReference };
}
