import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rules } from '../../src/check/list.js';
import type { Observation } from '../../src/model/observation.js';
import { LayoutReader } from '../../src/read/layout-reader.js';
import { firstBadBytes, notIJson } from './json-suite-bytes.js';

// JSONTestSuite by N. Seriot, github.com/nst/JSONTestSuite at 1ef36fa, MIT.
const folder = '../shared/data/json-parsing';
const here = existsSync(folder);
const names = here ? readdirSync(folder).filter((name) => name.endsWith('.json')) : [];
const title = here ? 'the texts of JSONTestSuite' : `the texts of JSONTestSuite, skipped because ${folder} is absent`;

const textRules = new Set(rules.filter(({ stage }) => stage === 'bytes' || stage === 'JSON').map(({ id }) => id));
/** Rules that say that a text is no JSON, or that it is not read to its end. */
const noJson = new Set(['not-utf8', 'json-syntax', 'nested-too-deep']);

/** What reading finds out about the text, before any schema. */
function textFindings(bytes: Uint8Array, chunk: number): Observation[] {
  const found: Observation[] = [];
  const reader = new LayoutReader((observation) => {
    if (textRules.has(observation.rule)) found.push(observation);
  });
  for (let at = 0; at < bytes.length; at += chunk) reader.write(bytes.subarray(at, at + chunk));
  reader.end();
  return found;
}

function read(name: string): Uint8Array {
  return readFileSync(`${folder}/${name}`);
}

function namesOf(prefix: string): string[] {
  return names.filter((name) => name.startsWith(prefix));
}

describe.skipIf(!here)(title, () => {
  it('are those of the tables: 188 to reject, 95 to take, 35 of either kind', () => {
    expect([namesOf('n_').length, namesOf('y_').length, namesOf('i_').length]).toEqual([188, 95, 35]);
    expect(Object.keys(firstBadBytes).sort()).toEqual(namesOf('n_').sort());
  });

  it.each(Object.entries(firstBadBytes))('%s is rejected at its first bad byte', (name, expected) => {
    const [byte, rule] = typeof expected === 'number' ? [expected, 'json-syntax'] : expected;
    const found = textFindings(read(name), 1 << 16);
    const [first] = found.filter((observation) => noJson.has(observation.rule));
    expect([first?.at.byte, first?.rule]).toEqual([byte, rule]);
    expect(found.filter((observation) => observation.rule === 'json-syntax').length).toBeLessThanOrEqual(1);
  });

  it.each(namesOf('y_'))('%s passes the JSON stage, save for what I-JSON forbids', (name) => {
    const found = textFindings(read(name), 1 << 16).map(({ at, rule }) => [at.byte, rule]);
    expect(found).toEqual(notIJson[name] === undefined ? [] : [notIJson[name]]);
  });

  it.each(namesOf('i_'))('%s is read to a finding or to its end', (name) => {
    const bytes = read(name);
    const found = textFindings(bytes, 1 << 16);
    for (const { at } of found) {
      expect(at.byte).toBeGreaterThanOrEqual(0);
      expect(at.byte).toBeLessThanOrEqual(bytes.length);
    }
    // The platform's parser is no judge of what is allowed, but what it refuses must not pass unseen.
    if (!isParsed(bytes)) expect(found).not.toEqual([]);
  });

  it('give the same findings byte by byte as at once', () => {
    for (const name of names) {
      const bytes = read(name);
      expect([name, textFindings(bytes, 1)]).toEqual([name, textFindings(bytes, bytes.length || 1)]);
    }
  });
});

function isParsed(bytes: Uint8Array): boolean {
  try {
    JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    return true;
  } catch {
    return false;
  }
}
