import { existsSync } from 'node:fs';
import type { ColumnProfile } from '../generated/column-profile.js';
import type { Config } from '../generated/config.js';
import type { Report } from '../generated/report.js';
import type { ClosedInput } from '../jobs/checked-input.js';
import { Checker, type CheckOptions } from '../jobs/checker.js';
import { BadRuleOption } from '../jobs/rule-options.js';
import { BadSeverity } from '../jobs/severities.js';
import type { Language } from '../model/language.js';
import type { Severity } from '../model/observation.js';
import type { Purpose } from '../model/rule.js';
import { UnreadableInput } from '../node/input-file.js';
import { BadBaseline } from '../policy/baseline.js';
import { type Manners, say } from './console.js';
import { WrongUse } from './exit.js';
import { type Fed, feed, STANDARD_INPUT } from './feed.js';
import { languageOf } from './language.js';
import type { NamedInput, Policy } from './policy.js';
import { isTableName, readDocument } from './read-document.js';

/** The config that holds where none is named. */
const CONFIG_NAME = 'ahx.config.json';

/** What people say about how files are to be checked; absent: what the config says, else the default. */
export interface CheckFlags {
  profile?: string;
  /** Path of a config; false: none, not even the one in the folder. */
  config?: string | false;
  baseline?: string;
  /** BCP 47 tag of the language of the messages. */
  language?: string;
  purpose?: Purpose;
  limit?: number;
  severity: string[];
  option: string[];
  asOf?: string;
  quiet: boolean;
}

/** Files that were checked. They stay open, to be looked at again, until `close`. */
export interface CheckedFiles {
  /** Undefined where none of the files could be read. */
  report: Report | undefined;
  /** In the order of the report; undefined for one that could not be read. */
  inputs: (ClosedInput | undefined)[];
  /** How many files could not be read. */
  unreadable: number;
  config: Config | undefined;
  /** Paths of all that was read: inputs, profiles, config and baseline. */
  files: readonly string[];
  /** Language of the report; undefined: English. */
  language: Language | undefined;
  close(): void;
}

/** What a command adds to the flags. */
interface CommandOptions {
  manners: Manners;
  sha256?: CheckOptions['sha256'];
  /** Most findings listed where neither flags nor config say it. */
  usualLimit?: number;
  /** Most findings listed whatever these say. */
  sampleLimit?: number;
}

/**
 * Checks files, those of the config where none are named.
 *
 * @throws WrongUse, UnreadableInput for a profile, a config or a baseline
 */
export async function checkFiles(
  names: readonly string[],
  flags: CheckFlags,
  { manners, sha256, usualLimit, sampleLimit }: CommandOptions,
): Promise<CheckedFiles> {
  const policy = await policyOf(flags);
  const inputs = names.length > 0 ? names.map((path) => ({ path })) : (policy?.inputs ?? []);
  if (inputs.length === 0) throw new WrongUse(noFiles(policy));
  const { profileOf, profiles } = readProfiles(inputs, flags.profile);
  const language = await languageOf(flags.language ?? policy?.config?.language ?? 'en');
  const checker = orWrongUse(() => {
    const { sampleLimit: asked = usualLimit, ...options } = checkOptions(flags, policy);
    return new Checker({ ...options, sampleLimit: sampleLimit ?? asked, sha256, language });
  });
  let unreadable = 0;
  // Findings about two inputs come last, and their lines are looked up in the files.
  const fed: (Fed | undefined)[] = [];
  for (const input of inputs) {
    try {
      fed.push(await feed(checker, input.path, profileOf(input), manners));
    } catch (error) {
      if (!(error instanceof UnreadableInput)) throw error;
      say(`ahx: ${error.message}`);
      checker.unreadable(input.path);
      fed.push(undefined);
      unreadable++;
    }
  }
  const report = unreadable === inputs.length ? undefined : orWrongUse(() => checker.end());
  return {
    report,
    inputs: fed.map((one) => one?.input),
    unreadable,
    config: policy?.config,
    files: [...inputs.map(({ path }) => path), ...profiles, ...(policy?.files ?? [])],
    language,
    close() {
      for (const one of fed) one?.close();
    },
  };
}

/**
 * Options of a check by flags and config, for commands that do it in another way.
 *
 * @throws WrongUse, UnreadableInput for a config or a baseline
 */
export async function checkOptionsOf(flags: CheckFlags): Promise<CheckOptions> {
  const policy = await policyOf(flags);
  return {
    ...checkOptions(flags, policy),
    language: await languageOf(flags.language ?? policy?.config?.language ?? 'en'),
  };
}

async function policyOf({ config, baseline }: CheckFlags): Promise<Policy | undefined> {
  const path = config ?? (existsSync(CONFIG_NAME) ? CONFIG_NAME : false);
  if (path === false && baseline === undefined) return undefined;
  const { readPolicy } = await import('./policy.js');
  return readPolicy(path === false ? undefined : path, baseline);
}

function noFiles(policy: Policy | undefined): string {
  return policy?.config === undefined
    ? 'No files are named, and there is no config that names them. See: ahx check --help'
    : 'No files are named, and the config names none in "inputs".';
}

/** With a profile, all but names of JSON files are tables: standard input too. */
function readProfiles(
  inputs: readonly NamedInput[],
  flag: string | undefined,
): { profileOf: (input: NamedInput) => ColumnProfile | undefined; profiles: string[] } {
  const paths = inputs.map(({ path }) => path);
  if (paths.filter((path) => path === STANDARD_INPUT).length > 1) {
    throw new WrongUse('Standard input can be read only once.');
  }
  const table = inputs.find(({ path, profile }) => isTableName(path) && (flag ?? profile) === undefined);
  if (table !== undefined) {
    throw new WrongUse(`${table.path} is a table; --profile FILE says which column is what. See: ahx check --help`);
  }
  const read = new Map<string, ColumnProfile>();
  for (const path of [flag, ...inputs.map(({ profile }) => profile)]) {
    if (path !== undefined && !read.has(path)) read.set(path, readDocument('column-profile', path, paths));
  }
  return {
    profileOf: ({ path, profile }) => (/\.jsonl?$/i.test(path) ? undefined : read.get(flag ?? profile ?? '')),
    profiles: [...read.keys()],
  };
}

/** Options of the call go before those of the config, rule by rule. */
function checkOptions(flags: CheckFlags, policy: Policy | undefined): CheckOptions {
  const { purpose, limit, severities = {}, ruleOptions = {} } = policy?.config ?? {};
  const options = readOptions(flags.option);
  for (const [rule, values] of Object.entries(ruleOptions)) options.set(rule, { ...values, ...options.get(rule) });
  return {
    purpose: flags.purpose ?? purpose,
    sampleLimit: flags.limit ?? limit,
    asOf: flags.asOf,
    severities: { ...severities, ...readSeverities(flags.severity) },
    // A name such as __proto__ is a member like others here, and so is told to be no rule.
    ruleOptions: Object.fromEntries(options),
    baseline: policy?.baseline,
  };
}

/** Does what may be refused for the options of the check. */
export function orWrongUse<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof BadBaseline) {
      throw new WrongUse(error.message.replace('(asOf)', '(--as-of TIME, or --as-of now)'));
    }
    throw error instanceof BadSeverity || error instanceof BadRuleOption
      ? new WrongUse(`${error.message} "ahx explain" lists all rules, "ahx explain RULE" what can be set.`)
      : error;
  }
}

function readSeverities(pairs: readonly string[]): Record<string, Severity | 'off'> {
  return Object.fromEntries(
    pairs.map((pair) => {
      const [rule, level, ...rest] = pair.split('=');
      if (rest.length > 0 || !['error', 'warning', 'info', 'off'].includes(level)) {
        throw new WrongUse(`--severity needs RULE=LEVEL with a level of error, warning, info or off, not "${pair}".`);
      }
      return [rule, level as Severity | 'off'];
    }),
  );
}

function readOptions(settings: readonly string[]): Map<string, Record<string, number>> {
  const options = new Map<string, Record<string, number>>();
  for (const setting of settings) {
    const [, rule, name, value] = /^([^.=]+)\.([^.=]+)=(.+)$/.exec(setting) ?? [];
    const number = Number(value);
    if (rule === undefined || !Number.isFinite(number))
      throw new WrongUse(`--option needs RULE.NAME=NUMBER, not "${setting}". See: ahx explain RULE`);
    options.set(rule, { ...options.get(rule), [name]: number });
  }
  return options;
}
