import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { siteToWgs84 } from '../../src/frame/site-to-wgs84.js';
import { convert, exampleLayouts, georeference, placedLayout, sampleLayout } from './geojson-sample.js';

const dataFolder = new URL('../../../shared/data/json-fg/', import.meta.url);
const hasSchemas = existsSync(dataFolder);

describe.skipIf(!hasSchemas)('JSON Schemas of JSON-FG (skipped where ../shared/data/json-fg is absent)', () => {
  // OGC JSON-FG 1.0, schemas of 2026-04-30 (checks.md F-02).
  const ajv = new Ajv2020({ strict: false, validateFormats: false });
  if (hasSchemas) {
    const folder = new URL('schemas/', dataFolder);
    for (const file of readdirSync(folder).filter((name) => name.endsWith('.json'))) {
      ajv.addSchema(JSON.parse(readFileSync(new URL(file, folder), 'utf8')));
    }
  }
  const faults = (document: unknown): unknown => {
    const validate = ajv.getSchema('https://schemas.opengis.net/json-fg/jsonfg-root-object.json');
    if (validate === undefined) throw new Error('No root schema.');
    return validate(document) ? [] : validate.errors;
  };

  it('hold for the published examples', () => {
    for (const file of ['building', 'circle', 'fence', 'pylon']) {
      expect(faults(JSON.parse(readFileSync(new URL(`${file}.example.json`, dataFolder), 'utf8')))).toEqual([]);
    }
  });

  it('hold for a layout with and without WGS 84', async () => {
    expect(faults(convert(sampleLayout).document)).toEqual([]);
    expect(faults(convert(placedLayout, { wgs84: await siteToWgs84(georeference) }).document)).toEqual([]);
  });

  it('hold for every example', () => {
    for (const [name, layout] of exampleLayouts()) {
      expect({ name, faults: faults(convert(layout).document) }).toEqual({ name, faults: [] });
    }
  });

  it('fail where a feature states a reference system, a root states no conformance, or a geometry is JSON-FG', () => {
    const spoil = (change: (document: ReturnType<typeof convert>['document']) => void): unknown => {
      const { document } = convert(sampleLayout);
      change(document);
      return faults(document);
    };
    expect(spoil(({ features }) => Object.assign(features[0], { coordRefSys: 'x:y' }))).not.toEqual([]);
    expect(spoil((document) => Object.assign(document, { conformsTo: [] }))).not.toEqual([]);
    expect(spoil(({ features }) => Object.assign(features[0], { geometry: features[11].place }))).not.toEqual([]);
  });
});
