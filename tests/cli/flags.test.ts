import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ahx } from './run-ahx.js';

/** What the tests beside this one hand to the command. */
const uses = new Set(
  readdirSync(import.meta.dirname)
    .filter((name) => name.endsWith('.test.ts') && name !== 'flags.test.ts')
    .flatMap((name) => readFileSync(`${import.meta.dirname}/${name}`, 'utf8').match(/'--?[a-zA-Z][a-z-]*'/g) ?? [])
    .map((quoted) => quoted.slice(1, -1)),
);

/** Flags in the list of options of a help text. */
function flagsIn(help: string): string[] {
  return help
    .slice(help.indexOf('\nOptions:'))
    .split('\n')
    .filter((line) => /^ {2}-/.test(line))
    .flatMap((line) => line.match(/(?<=^ {2}|, )--?[a-zA-Z][a-z-]*/g) ?? []);
}

describe('the flags of the command', () => {
  it.each([[[]], [['check']], [['convert']], [['explain']], [['fix']], [['baseline']], [['report']], [['sheet']]])(
    '%j are all used by a test',
    (of: string[]) => {
      const flags = flagsIn(ahx([...of, '--help']).out);
      expect(flags).toContain('--help');
      expect(flags.filter((flag) => !uses.has(flag))).toEqual([]);
    },
  );

  it('are found in the help, long and short', () => {
    expect(flagsIn(ahx(['check', '--help']).out).sort()).toEqual([
      '--as-of',
      '--baseline',
      '--colour',
      '--config',
      '--format',
      '--help',
      '--language',
      '--limit',
      '--no-config',
      '--option',
      '--profile',
      '--purpose',
      '--quiet',
      '--severity',
      '--threshold',
      '-b',
      '-c',
      '-f',
      '-h',
      '-l',
      '-n',
      '-o',
      '-p',
      '-q',
      '-s',
      '-t',
    ]);
  });
});
