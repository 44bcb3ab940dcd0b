import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { GEOMETRY_MEMBERS } from '../../src/check/geometry-members.js';
import { meaningLeftOut, NO_SIZE, NOTHING } from '../../src/check/left-out.js';
import { memberNames } from '../../src/generated/schema-tables.js';

interface Schema {
  $ref?: string;
  allOf?: Schema[];
  anyOf?: Schema[];
  properties?: Record<string, Schema>;
  items?: Schema;
  required?: string[];
  description?: string;
  $defs?: Record<string, Schema>;
}

const root = JSON.parse(
  readFileSync(new URL('../../schema/0.1/layout.schema.json', import.meta.url), 'utf8'),
) as Schema;

/** The members of layouts by the way to them without indexes, with what is said of them. */
const members = new Map<string, { isRequired: boolean; description: string }>();

function walk(schema: Schema, way: readonly string[]): void {
  if (way.length > 4) return;
  const name = schema.$ref?.split('#/$defs/')[1];
  if (name !== undefined) walk(root.$defs?.[name] ?? {}, way);
  for (const part of [...(schema.allOf ?? []), ...(schema.anyOf ?? [])]) walk(part, way);
  if (schema.items !== undefined) walk(schema.items, way);
  for (const [member, own] of Object.entries(schema.properties ?? {})) {
    const isRequired = schema.required?.includes(member) ?? false;
    members.set([...way, member].join('.'), { isRequired, description: own.description ?? '' });
    walk(own, [...way, member]);
  }
}
walk(root, []);

describe('a member that may be left out where it is null', () => {
  it.each([...NOTHING, ...NO_SIZE])(
    '%s is one of the schema, not required, and its absence has no meaning there',
    (way) => {
      expect(members.get(way)?.isRequired).toBe(false);
      expect(members.get(way)?.description).not.toMatch(/absent/i);
    },
  );

  it.each(['axis', 'depth', 'diameter', 'depthTolerance', 'positionTolerance', 'moveAllowance'])(
    'is not the %s of a hole, for which that of another record holds',
    (member) => {
      expect(members.has(`holes.${member}`)).toBe(true);
      expect(meaningLeftOut(['holes', '7', member])).toBeUndefined();
    },
  );

  it('is the depth of a hole type as a size', () => {
    expect(meaningLeftOut(['holeTypes', '0', 'depth'])).toBe('no size');
    expect(meaningLeftOut(['holes', '0', 'tag'])).toBe('nothing');
  });
});

describe('the names of sizes', () => {
  it('are all names of the schema', () => {
    const names = new Set(Object.values(memberNames.layout).flat());
    expect([...GEOMETRY_MEMBERS].filter((name) => !names.has(name))).toEqual([]);
  });
});
