import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020, type ErrorObject } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { exampleJson, examplePaths, exampleText } from './example-files.js';

const schemaFolder = new URL('../../schema/0.1/', import.meta.url);
const poorLayout = 'poor/poor.ahx.json';

/** Validator of one document kind, made from the hand-written schemas, not from what is built. */
function validatorOf(kind: string) {
  const ajv = new Ajv2020({ allErrors: true, strict: false });
  let id = '';
  for (const file of readdirSync(schemaFolder).filter((name) => name.endsWith('.schema.json'))) {
    const schema = JSON.parse(readFileSync(new URL(file, schemaFolder), 'utf8'));
    ajv.addSchema(schema);
    if (file === `${kind}.schema.json`) id = schema.$id;
  }
  const validate = ajv.getSchema(id);
  if (validate === undefined) throw new Error(`no schema for ${kind}`);
  return (document: unknown): ErrorObject[] => {
    validate(document);
    return validate.errors ?? [];
  };
}

const layoutErrors = validatorOf('layout');
const profileErrors = validatorOf('column-profile');
const goodLayouts = examplePaths('.ahx.json').filter((path) => path !== poorLayout);
const profiles = examplePaths('.profile.json');

function withoutHoles(profilePath: string): Record<string, unknown> {
  const { layout } = exampleJson(profilePath) as { layout: Record<string, unknown> };
  return { ahx: '0.1', kind: 'layout', ...layout, holes: [] };
}

describe('the examples against the schema', () => {
  it('are these files', () => {
    expect(goodLayouts).toEqual([
      'ferry-terminal/duct.ahx.json',
      'ferry-terminal/sprinkler.ahx.json',
      'workshop-deck/workshop.ahx.json',
    ]);
    expect(profiles).toEqual(['ferry-terminal/sprinkler.profile.json', 'poor/survey-list.profile.json']);
  });

  it.each(goodLayouts)('%s is a layout without fault', (path) => {
    expect(layoutErrors(exampleJson(path))).toEqual([]);
  });

  it.each(profiles)('%s is a column profile without fault', (path) => {
    expect(profileErrors(exampleJson(path))).toEqual([]);
  });

  it.each(profiles)('what %s gives besides the holes is a layout without fault', (path) => {
    expect(layoutErrors(withoutHoles(path))).toEqual([]);
  });

  it.each([...goodLayouts, ...profiles, poorLayout])('%s names the bundle of its schema', (path) => {
    const { $schema, kind } = exampleJson(path) as { $schema: string; kind: string };
    expect($schema).toBe(`../../schema/0.1/bundle/${kind}.schema.json`);
  });

  it('the poor layout has exactly its four planted schema faults', () => {
    const faults = layoutErrors(exampleJson(poorLayout)).map(({ instancePath, keyword, params }) => ({
      instancePath,
      keyword,
      params,
    }));
    expect(faults).toHaveLength(4);
    expect(faults).toEqual(
      expect.arrayContaining([
        {
          instancePath: '/parties/1/role',
          keyword: 'enum',
          params: { allowedValues: expect.arrayContaining(['foreman']) },
        },
        { instancePath: '/holes/11/depth', keyword: 'type', params: { type: 'number' } },
        {
          instancePath: '/holes/12',
          keyword: 'additionalProperties',
          params: { additionalProperty: 'diametre' },
        },
        { instancePath: '/holes/13', keyword: 'required', params: { missingProperty: 'point' } },
      ]),
    );
  });

  it('only the poor layout has a name twice in one object', () => {
    const changed = (path: string) =>
      exampleText(path).replace(/\s/g, '') !== JSON.stringify(exampleJson(path)).replace(/\s/g, '');
    expect(examplePaths('.json').filter(changed)).toEqual([poorLayout]);
  });
});
