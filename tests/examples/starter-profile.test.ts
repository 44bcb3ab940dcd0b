import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import type { Layout } from '../../src/generated/layout.js';
import { check, createChecker } from '../../src/jobs/check.js';
import { convert, whyNot } from '../../src/jobs/convert.js';
import { exampleText } from './example-files.js';

const starter = /```json\n([\s\S]*?)```/.exec(exampleText('README.md'))?.[1] ?? '';

describe('the profile to start from', () => {
  it('has no finding', () => {
    const { verdict, counts, inputs } = check([{ name: 'starter', data: starter }]);
    expect(inputs[0].kind).toBe('column-profile');
    expect([verdict.format, counts]).toEqual(['pass', { error: 0, warning: 0, info: 0 }]);
  });

  it('is short', () => {
    expect(starter.trimEnd().split('\n').length).toBeLessThanOrEqual(12);
  });

  it('makes a valid layout of the list that it is for', async () => {
    const header = /with the header `([^`]*)`/.exec(exampleText('README.md'))?.[1] ?? '';
    const checker = createChecker();
    checker.open('points.csv', { profile: JSON.parse(starter) as ColumnProfile });
    checker.write(new TextEncoder().encode(`${header}\nP-1,1.5,2,3.25\nP-2,2.5,2,\n`));
    const input = checker.close();
    const report = checker.end();
    expect(whyNot(report, input)).toBeUndefined();
    const source = input.layout();
    if (source === undefined) throw new Error('no layout to convert');
    const { text } = await convert(source, { form: 'layout' });
    const layout = [...text].join('');
    expect((JSON.parse(layout) as Layout).holes.map(({ id, point }) => [id, point])).toEqual([
      ['P-1', [1500, 2000, 3250]],
      ['P-2', [2500, 2000]],
    ]);
    expect(check([{ name: 'points.ahx.json', data: layout }]).verdict.format).toBe('pass');
  });
});
