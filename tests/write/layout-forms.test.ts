import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Form, layoutForm } from '../../src/write/layout-forms.js';

interface SchemaNode {
  $ref?: string;
  allOf?: SchemaNode[];
  description?: string;
  type?: string;
  items?: SchemaNode;
  properties?: Record<string, SchemaNode>;
  $defs?: Record<string, SchemaNode>;
}

function read(file: string): SchemaNode {
  return JSON.parse(readFileSync(new URL(`../../schema/0.1/${file}`, import.meta.url), 'utf8')) as SchemaNode;
}

const layoutSchema = read('layout.schema.json');
const sharedSchema = read('shared.schema.json');

/** The form that the schema asks for: its descriptions say which numbers are millimetres. */
function formOf(node: SchemaNode, document: SchemaNode, said = ''): Form {
  const description = `${said} ${node.description ?? ''}`;
  const reference = node.$ref ?? node.allOf?.[0].$ref;
  if (reference !== undefined) {
    const [file, name] = reference.split('#/$defs/');
    const home = file === '' ? document : sharedSchema;
    return formOf(home.$defs?.[name] ?? {}, home, description);
  }
  if (node.properties !== undefined) {
    return Object.fromEntries(
      Object.entries(node.properties).map(([name, member]) => [name, formOf(member, document)]),
    );
  }
  if (node.type === 'array' && node.items !== undefined) return formOf(node.items, document, description);
  return node.type === 'number' && /millimetres/.test(description) ? 'mm' : 'plain';
}

/** Names in order too, which toEqual leaves aside. */
function orderOf(form: Form): unknown {
  return typeof form === 'string' ? form : Object.entries(form).map(([name, member]) => [name, orderOf(member)]);
}

describe('layoutForm', () => {
  it('has the members of the schema in its order, and millimetres where its descriptions say so', () => {
    expect(orderOf(layoutForm)).toEqual(orderOf(formOf(layoutSchema, layoutSchema)));
  });
});
