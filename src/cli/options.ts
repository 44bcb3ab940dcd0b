import { type Command, InvalidArgumentError, Option } from 'commander';
import { isDateTime } from './date-time.js';

/** What commands take whose exit code says what was found. */
export function judging(command: Command, language: string): Command {
  return command
    .addOption(
      new Option('-t, --threshold <severity>', 'least severity that makes the exit code 1 (default: error)').choices([
        'error',
        'warning',
        'info',
      ]),
    )
    .option('-b, --baseline <file>', 'findings that the project has accepted for a time')
    .option('-l, --language <tag>', `${language}: en or es (default: en)`);
}

/** What all commands that check take. */
export function checking(command: Command, purpose = 'for-review'): Command {
  return command
    .option('-p, --profile <file>', 'column profile to read tables with; - is standard input')
    .addOption(
      new Option('--purpose <purpose>', `what the layouts are checked for (default: ${purpose})`).choices([
        'for-review',
        'for-drilling',
        'for-closeout',
      ]),
    )
    .option(
      '-s, --severity <rule=level>',
      'severity of one rule: error, warning, info or off; may be repeated',
      collect,
      [],
    )
    .option('-o, --option <rule.name=number>', 'option of one rule; may be repeated', collect, [])
    .option('-c, --config <file>', 'config of the project (default: ahx.config.json, where it is there)')
    .option('--no-config', 'check without the config that is there')
    .option('--as-of <time>', 'time that the check takes as now, RFC 3339 or now; for what runs out', rfc3339);
}

export function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError('It must be a whole number of 0 or more.');
  return Number(text);
}

export function rfc3339(text: string): string {
  if (text === 'now') return new Date().toISOString();
  if (!isDateTime(text)) throw new InvalidArgumentError('It must be a time such as 2026-03-02T07:30:00-05:00.');
  return text;
}

export function collect(text: string, before: string[]): string[] {
  return [...before, text];
}
