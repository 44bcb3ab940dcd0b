import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { GITHUB_MOST_ANNOTATIONS, githubReport } from '../../src/report/github.js';
import { es } from '../../src/report/languages/es.js';
import { printable } from '../../src/model/printable.js';
import { verdictLines } from '../../src/report/text.js';
import { cause, coverage, HOSTILE, hostileReport, largeReport, reportOf } from './synthetic-report.js';

interface Command {
  name: string;
  properties: Record<string, string>;
  text: string;
}

/** Commands as the documentation of the service has them read: `::name key=value,key=value::text`. */
function commandsOf(log: string): Command[] {
  expect(log.endsWith('\n')).toBe(true);
  return log
    .slice(0, -1)
    .split(/\r\n|\r|\n/)
    .map((line) => {
      const [, name, properties, text] = /^::(\w+) ([^:]*)::(.*)$/s.exec(line) ?? [];
      expect(name, line).toBeDefined();
      const pairs = properties.split(',').map((pair) => {
        const at = pair.indexOf('=');
        return [pair.slice(0, at), unescaped(pair.slice(at + 1))];
      });
      return { name, properties: Object.fromEntries(pairs), text: unescaped(text) };
    });
}

function unescaped(text: string): string {
  return text.replace(/%(0A|0D|3A|2C|25)/g, (_, digits) => String.fromCharCode(Number.parseInt(digits, 16)));
}

describe('the workflow commands', () => {
  it('stand at file and line, one for a cause, and end with verdicts and caution', () => {
    const report = reportOf({ causes: [cause(1, { findings: 3, holes: [{ id: 'H-1', tag: 'A' }, { id: 'H-2' }] })] });
    expect(commandsOf(githubReport(report))).toEqual([
      {
        name: 'error',
        properties: { file: 'level3.ahx.json', line: '7', col: '3', title: 'holes-too-close (site)' },
        text: 'Cause 1. (holes H-1 (tag A), H-2, …; 3 findings)',
      },
      { name: 'notice', properties: { title: 'AHX check' }, text: [...verdictLines(report), SHORT_CAUTION].join('\n') },
    ]);
  });

  it('give the place in a table in words, for a row is not always a line', () => {
    const report = reportOf({ causes: [cause(1, { place: { row: 7, column: 2 }, holes: [] })] });
    const [{ properties, text }] = commandsOf(githubReport(report));
    expect(properties).toEqual({ file: 'level3.ahx.json', title: 'holes-too-close (site)' });
    expect(text).toBe('Cause 1. (row 7, column 2)');
  });

  it('are ten of a severity at most, the gravest first, and the last notice counts the rest', () => {
    const causes = Array.from({ length: 36 }, (_, k) =>
      cause(k + 1, { severity: k < 12 ? 'error' : k < 24 ? 'warning' : 'info' }),
    );
    const commands = commandsOf(githubReport(reportOf({ causes })));
    expect(commands.map(({ name }) => name)).toEqual([
      ...Array(GITHUB_MOST_ANNOTATIONS).fill('error'),
      ...Array(GITHUB_MOST_ANNOTATIONS).fill('warning'),
      ...Array(GITHUB_MOST_ANNOTATIONS).fill('notice'),
    ]);
    expect(commands.at(-1)?.text).toContain('Not shown here: 7 further causes');
  });

  it('leave out what a baseline accepts, and count it', () => {
    const counts = { error: 4, warning: 0, info: 0 };
    const report = reportOf({ causes: [cause(1, { accepted: 1, findings: 4 })], baseline: { entries: [], counts } });
    const commands = commandsOf(githubReport(report));
    expect(commands).toHaveLength(1);
    expect(commands[0].text).toContain('4 more findings accepted');
  });

  it('say in the last notice what was not judged and why', () => {
    const report = reportOf({
      coverage: [
        coverage('off-surface', { outcome: 'not-run', reason: 'no substrate named' }),
        coverage('breaks-through', { judged: 2, of: 5, reason: '3 left out: depth not known' }),
      ],
    });
    expect(commandsOf(githubReport(report))[0].text.split('\n').slice(1)).toEqual([
      'Site checks (for review): 0 errors, 0 warnings on 10 holes; 1 rule not run, 1 rule run in part.',
      'not judged: no substrate named (off-surface)',
      'not judged: 3 left out: depth not known (breaks-through)',
      SHORT_CAUTION,
    ]);
  });

  it('are in the language of the report', () => {
    const causes = Array.from({ length: 11 }, (_, k) => cause(k + 1));
    const last = commandsOf(githubReport(reportOf({ causes }), { phrases: es.phrases })).at(-1);
    expect(last?.properties.title).toBe('Comprobación AHX');
    expect(last?.text).toContain('No se muestra aquí: 1 causa más');
    expect(last?.text).toContain(es.phrases.shortCaution);
  });

  it('hold every text in its own command, whatever it is', () => {
    const nasty = fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'binary' }));
    fc.assert(
      fc.property(nasty, (text) => {
        const commands = commandsOf(githubReport(hostileReport(text)));
        expect(commands.map(({ name }) => name)).toEqual(['error', 'warning', 'notice']);
        const shown = printable(text);
        expect(commands[0].properties.file).toBe(shown);
        expect(commands[1].properties.title).toBe(printable(`${text} (site)`));
        expect(commands[0].text.startsWith(`${shown} (holes ${shown}`)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('stay small for a million findings', () => {
    const report = largeReport(20_000);
    report.sample = { ...report.sample, total: 1_000_000 };
    const log = githubReport(report);
    expect(log).toBe(githubReport(structuredClone(report)));
    expect(log.length).toBeLessThan(100_000);
    expect(commandsOf(log).at(-1)?.text).toContain('Not shown here: 9980 further causes');
  });
});
