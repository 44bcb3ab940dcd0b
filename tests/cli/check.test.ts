import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/generated/report.js';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { hole, layoutText } from '../jobs/small-layout.js';
import {
  ahx,
  example,
  poor,
  sprinkler,
  sprinklerPoints,
  sprinklerProfile,
  survey,
  surveyProfile,
  workFolder,
} from './run-ahx.js';

const { file, path } = workFolder();
const good = file('good.ahx.json', layoutText());
const missing = path('missing.ahx.json');
/** In the way of the hole, which gives an info. */
const bar = {
  id: 'B',
  kind: 'bar',
  standoff: 5,
  knownFrom: 'design-drawing',
  shape: {
    path: {
      points: [
        [-9, 2, 3],
        [9, 2, 3],
      ],
      radius: 5,
    },
  },
};
const onlyInfo = file('info.ahx.json', layoutText({ keepOuts: [bar] }));
const warning = file('warning.ahx.json', layoutText({ holes: [hole('H-1', [1, 2, 3]), hole('h-1', [99, 2, 3])] }));
const laterMinor = file('later.ahx.json', layoutText({ ahx: '0.2' }));

function report(...args: string[]): Report {
  return JSON.parse(ahx(['check', ...args, '--format', 'json']).out) as Report;
}

describe('the exit code of ahx check', () => {
  it('is 0 where nothing is found', () => {
    expect(ahx(['check', good])).toMatchObject({ code: 0, err: '' });
  });

  it('is 1 where something is found, or cannot be judged', () => {
    expect(ahx(['check', poor]).code).toBe(1);
    expect(ahx(['check', laterMinor]).code).toBe(1);
  });

  it('is 2 for a wrong use', () => {
    for (const args of [[], ['--limit', 'many', good], ['--format', 'xml', good], ['--unknown', good], [survey]]) {
      expect([args, ahx(['check', ...args]).code]).toEqual([args, 2]);
    }
  });

  it('is 3 for an input that cannot be read', () => {
    const { code, out, err } = ahx(['check', missing]);
    expect([code, out]).toEqual([3, '']);
    expect(err).toBe(`ahx: ${missing} cannot be read: there is no such file or folder.\n`);
  });

  it('with several files is the gravest, and the others are checked all the same', () => {
    expect(ahx(['check', good, sprinkler]).code).toBe(0);
    expect(ahx(['check', good, poor]).code).toBe(1);
    const { code, out, err } = ahx(['check', poor, missing, good]);
    expect(code).toBe(3);
    expect(out).toContain('Not valid AHX 0.1: 7 errors.');
    expect(err).toContain('missing.ahx.json cannot be read');
  });

  it('goes by the threshold', () => {
    const codes = (name: string) =>
      ['error', 'warning', 'info'].map((threshold) => ahx(['check', '--threshold', threshold, name]).code);
    expect(codes(good)).toEqual([0, 0, 0]);
    expect(codes(onlyInfo)).toEqual([0, 0, 1]);
    expect(codes(warning)).toEqual([0, 1, 1]);
    expect(ahx(['check', '-t', 'warning', warning]).code).toBe(1);
  });

  it('goes by severities that are set', () => {
    expect(ahx(['check', '--severity', 'lookalike-id=error', warning]).code).toBe(1);
    expect(ahx(['check', '--severity', 'lookalike-id=off', '--threshold', 'info', warning]).code).toBe(0);
    expect(ahx(['check', '-s', 'lookalike-id=info', '-s', 'crosses-keep-out=error', warning, onlyInfo]).code).toBe(1);
  });
});

describe('standard input', () => {
  it('is read as JSON', () => {
    const { code, out } = ahx(['check', '-'], { input: readFileSync(poor) });
    expect(code).toBe(1);
    expect(out).toMatch(/^standard input\n/);
    expect(out).toContain('Not valid AHX 0.1: 7 errors.');
  });

  it('is read as a table with a profile', () => {
    const { code, out } = ahx(['check', '-', '--profile', sprinklerProfile], { input: readFileSync(sprinklerPoints) });
    expect(code).toBe(0);
    expect(out).toContain('4 with "CTL"');
    expect(out).toContain('Readable by its profile as AHX 0.1.');
  });

  it('goes together with files', () => {
    const { inputs } = JSON.parse(ahx(['check', good, '-', '-f', 'json'], { input: layoutText() }).out) as Report;
    expect(inputs.map(({ name }) => name)).toEqual([good, 'standard input']);
  });
});

describe('the text report', () => {
  it('of a sound layout is the two verdicts and the caution', () => {
    expect(ahx(['check', good]).out).toBe(
      `Valid AHX 0.1.\nSite checks (for review): 0 errors, 0 warnings on 1 hole.\n\n${SHORT_CAUTION}\n`,
    );
  });

  it('is only the two verdicts with --quiet', () => {
    const expected =
      'Not valid AHX 0.1: 7 errors.\nSite checks (for review): 6 errors, 0 warnings in 5 causes on 16 holes, 10 of them judged; 11 rules run in part.\n';
    expect(ahx(['check', '--quiet', poor]).out).toBe(expected);
    expect(ahx(['check', '-q', poor]).out).toBe(expected);
  });

  it('says what it was checked for', () => {
    expect(ahx(['check', '--purpose', 'for-drilling', good]).out).toContain('Site checks (for drilling):');
  });

  it('has colour only where it is asked for', () => {
    const mark = '\u001b[';
    expect(ahx(['check', poor]).out).not.toContain(mark);
    expect(ahx(['check', '--colour', 'auto', poor]).out).not.toContain(mark);
    expect(ahx(['check', '--colour', 'always', poor]).out).toContain(`${mark}31merror`);
    expect(ahx(['check', '--colour', 'always', poor], { env: { NO_COLOR: '1' } }).out).toContain(mark);
    expect(ahx(['check', '--colour', 'never', poor], { env: { FORCE_COLOR: '1' } }).out).not.toContain(mark);
    expect(ahx(['check', '--help'], { env: { FORCE_COLOR: '1' } }).out).not.toContain(mark);
  });

  it('says how many findings it lists where it does not list all, and counts all', () => {
    const { out } = ahx(['check', '--limit', '2', poor]);
    expect(out).toContain('2 of 13 findings are listed');
    expect(out).toContain('Not valid AHX 0.1: 7 errors.');
    expect(ahx(['check', '-n', '0', poor]).out).toContain('0 of 13 findings are listed');
  });
});

describe('the report in JSON', () => {
  const schema = JSON.parse(readFileSync('schema/0.1/bundle/report.schema.json', 'utf8')) as object;
  const validate = new Ajv2020({ strict: false, allErrors: true }).compile(schema);

  it.each([
    ['a sound layout', [good]],
    ['a poor one', [poor]],
    ['a poor table', [survey, '--profile', surveyProfile]],
    ['several inputs', [poor, sprinkler, sprinklerProfile, laterMinor, '--as-of', '2026-03-02T07:30:00-05:00']],
    ['nothing listed', [poor, '--limit', '0']],
    ['a file that is no JSON', [example('README.md')]],
  ])('of %s is valid against its schema and the same byte for byte', (_, args) => {
    const first = ahx(['check', '--format', 'json', ...args]);
    validate(JSON.parse(first.out));
    expect(validate.errors ?? []).toEqual([]);
    expect(first.out.endsWith('}\n')).toBe(true);
    expect(ahx(['check', '-f', 'json', ...args])).toEqual(first);
  });

  it('names the time that was handed in, and none otherwise', () => {
    expect(report(good, '--as-of', '2026-03-02T07:30:00-05:00').asOf).toBe('2026-03-02T07:30:00-05:00');
    expect('asOf' in report(good)).toBe(false);
  });

  it('lists as many findings as the limit says, and counts all', () => {
    const { findings, sample, counts, causes } = report(poor, '--limit', '4');
    expect(findings).toHaveLength(4);
    expect(sample).toEqual({ limit: 4, listed: 4, total: 13 });
    expect(counts.error).toBe(13);
    expect(causes.reduce((sum, cause) => sum + cause.findings, 0)).toBe(13);
  });

  it('can be checked itself', () => {
    const name = file('report.json', ahx(['check', poor, '-f', 'json']).out);
    expect(ahx(['check', name])).toMatchObject({ code: 0 });
    expect(report(name).inputs[0].kind).toBe('report');
  });

  it('has the purpose', () => {
    expect(report(good, '--purpose', 'for-closeout').purpose).toBe('for-closeout');
  });
});

describe('a wrong use', () => {
  it('of a command or an option comes with what was meant', () => {
    const cases: [args: string[], hint: string][] = [
      [['chek', good], 'Did you mean check?'],
      [['check', '--thresold', 'error', good], 'Did you mean --threshold?'],
      [['convert', '--profil', 'x', 'a', 'b'], 'Did you mean --profile?'],
      [['check', '--severity', 'holes-close=error', good], 'Did you mean "holes-too-close"?'],
      [['explain', 'hole-coincide'], 'Did you mean "holes-coincide"?'],
    ];
    for (const [args, hint] of cases) {
      const { code, out, err } = ahx(args);
      expect([args, code, out]).toEqual([args, 2, '']);
      expect(err).toContain(hint);
    }
  });

  it('of --severity says what is wrong', () => {
    for (const [pair, words] of [
      ['no-such-rule=error', 'There is no rule "no-such-rule"'],
      ['holes-coincide=loud', 'a level of error, warning, info or off'],
      ['holes-coincide', 'RULE=LEVEL'],
      ['holes-coincide=error=off', 'RULE=LEVEL'],
      ['=error', 'There is no rule ""'],
      ['json-syntax=off', 'stays error for everybody'],
      ['holes-coincid=error', 'Did you mean "holes-coincide"?'],
      ['__proto__=error', 'There is no rule "__proto__"'],
    ]) {
      const { code, err } = ahx(['check', '--severity', pair, good]);
      expect([pair, code]).toEqual([pair, 2]);
      expect(err).toContain(words);
    }
  });

  it('of a value says what is allowed', () => {
    for (const [option, value, words] of [
      ['--limit', '-1', 'whole number'],
      ['--limit', '1.5', 'whole number'],
      ['--as-of', 'yesterday', '2026-03-02T07:30:00-05:00'],
      ['--format', 'xml', 'text, json'],
      ['--threshold', 'fatal', 'error, warning, info'],
      ['--purpose', 'for-fun', 'for-review'],
      ['--colour', 'red', 'auto, always, never'],
    ]) {
      const { code, out, err } = ahx(['check', option, value, good]);
      expect([option, code, out]).toEqual([option, 2, '']);
      expect(err).toContain(words);
    }
  });
});

describe('help and version', () => {
  it('go to standard output and are no error', () => {
    for (const args of [['--help'], ['-h'], ['help'], ['check', '--help'], ['help', 'check'], ['--version'], ['-V']]) {
      const { code, out, err } = ahx(args);
      expect([args, code, err]).toEqual([args, 0, '']);
      expect(out).not.toBe('');
    }
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(ahx(['--version']).out.trim()).toBe(version);
  });

  it('come, as an error, where no command is named', () => {
    const { code, out, err } = ahx([]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('Usage: ahx');
  });

  it('have an example for each command, and the caution', () => {
    for (const name of ['check', 'convert', 'explain']) expect(ahx([name, '--help']).out).toContain(`\n  ahx ${name} `);
    expect(ahx(['--help']).out).toContain('not a permit to drill');
  });
});

describe('ahx explain', () => {
  it('lists all rules', () => {
    const { code, out } = ahx(['explain']);
    expect(code).toBe(0);
    expect(out).toMatch(/^not-utf8 +format +error +/);
    const published = JSON.parse(readFileSync('schema/0.1/rules.json', 'utf8')) as { id: string }[];
    expect(
      out
        .trimEnd()
        .split('\n')
        .map((line) => line.split(' ')[0]),
    ).toEqual(published.map(({ id }) => id));
  });

  it('prints the page of a rule', () => {
    const { code, out } = ahx(['explain', 'holes-too-close']);
    expect(code).toBe(0);
    expect(out).toMatch(/^# holes-too-close\n/);
    for (const heading of ['## Why it matters', '## How to mend it', '## Example']) expect(out).toContain(heading);
  });
});
