import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { referencePages } from '../../src/build/reference-pages.js';

const root = join(import.meta.dirname, '../..');
const pages = referencePages(root);
const schemas = Object.keys(pages).map((page) => `${basename(page, '.md')}.schema.json`);

/** Names of the members of all objects in a schema, wherever they stand. */
function memberNames(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  const { properties } = node as { properties?: Record<string, unknown> };
  const own = properties === undefined ? [] : Object.keys(properties);
  return [...own, ...Object.values(node).flatMap(memberNames)];
}

describe('the reference pages', () => {
  it.each(schemas)('have a row for every member of %s', (name) => {
    const page = pages[`spec/reference/${name.replace('.schema.json', '.md')}`];
    const rows = [...page.matchAll(/^\| `([^`]+)` \|/gm)].map(([, member]) => member).sort();
    const wanted = memberNames(JSON.parse(readFileSync(join(root, 'schema/0.1', name), 'utf8'))).sort();
    expect(wanted.length).toBeGreaterThan(0);
    expect(rows).toEqual(wanted);
  });

  it('lead from a member to the table of its object', () => {
    for (const page of Object.values(pages)) {
      const headings = new Set(
        [...page.matchAll(/^## (.*)$/gm)].map(([, text]) => text.toLowerCase().replaceAll('.', '')),
      );
      for (const [, anchor] of page.matchAll(/\]\(#([^)]+)\)/g)) expect(headings).toContain(anchor);
    }
    expect(pages['spec/reference/report.md']).toContain('| `verdict` | [object](#verdict) |');
  });
});
