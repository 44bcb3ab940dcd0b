import type { Acceptance, AcceptedFinding, Baseline } from '../generated/baseline.js';
import type { Coverage, Finding, Report } from '../generated/report.js';
import { SCHEMA_VERSION } from '../generated/schema-tables.js';
import { BadBaseline, canBeMissed, type Looked } from './baseline.js';
import { isSameFact, lastingFacts } from './lasting-facts.js';

/** What is said of findings when they are accepted. */
export interface Accepting {
  reason: string;
  owner: string;
  /** Day on which they are accepted, `YYYY-MM-DD`. */
  accepted?: string;
  /** Last day on which they are accepted, `YYYY-MM-DD`. */
  expires: string;
  question?: string;
  /** Rules whose findings are meant; absent: all of classes `data` and `site`. */
  rules?: readonly string[];
}

/**
 * A baseline with what a report lists and no entry accepts yet: one entry for each rule and layout. Findings of
 * class `format` are not taken: a file that breaks AHX is mended, not accepted.
 *
 * @param before the baseline that was applied to the check, if any
 * @throws BadBaseline where the report does not list all of its findings
 */
export function acceptFindings(report: Report, accepting: Accepting, before?: Baseline): Baseline {
  needWhole(report);
  const { rules, ...said } = accepting;
  const today = said.accepted ?? report.asOf?.slice(0, said.expires.length) ?? '';
  if (said.expires < today) throw new BadBaseline(`The last day, ${said.expires}, is before ${today}.`);
  const entries = new Map<string, Acceptance>();
  for (const finding of report.findings) {
    const { rule, cause, accepted, input } = finding;
    const isMeant = rules === undefined || rules.includes(rule);
    if (accepted !== undefined || !isMeant || report.causes[cause - 1].class === 'format') continue;
    const { id, name } = report.inputs[input - 1];
    const layout = id ?? name;
    const key = JSON.stringify([rule, layout]);
    const { reason, owner, ...dates } = said;
    const entry = entries.get(key) ?? { rule, layout, reason, owner, ...dates, findings: [] as never };
    (entry.findings as AcceptedFinding[]).push(asAccepted(finding, report));
    entries.set(key, entry);
  }
  const rest = before ?? { ahx: SCHEMA_VERSION, kind: 'baseline', entries: [] };
  return { ...rest, entries: [...withoutRenewed(rest.entries, [...entries.values()]), ...entries.values()] };
}

/** Earlier entries without what is accepted anew, because it had run out. */
function withoutRenewed(entries: readonly Acceptance[], renewed: readonly Acceptance[]): Acceptance[] {
  return entries.flatMap((entry) => {
    const same = renewed.filter(({ rule, layout }) => rule === entry.rule && layout === entry.layout);
    const isRenewed = (old: AcceptedFinding) =>
      same.some(({ findings }) => findings.some((one) => isSameFact({ ...one }, { ...old })));
    const findings = same.length === 0 ? entry.findings : entry.findings.filter((old) => !isRenewed(old));
    return findings.length === 0 ? [] : [{ ...entry, findings: findings as typeof entry.findings }];
  });
}

/**
 * The baseline without the findings that are there no more; entries that have none left go. What was not looked at
 * stays: another layout, a rule that did not run on all that it is about, a layout of which a part was broken or in
 * doubt. So does what has run out.
 *
 * @throws BadBaseline where the report does not list all of its findings, or was made without this baseline
 */
export function pruneBaseline(baseline: Baseline, report: Report): Baseline {
  needWhole(report);
  if (report.baseline?.entries.length !== baseline.entries.length)
    throw new BadBaseline('The report was made without this baseline.');
  const looked = lookedAt(report.inputs, report.verdict.format, report.coverage);
  const there = new Map<string, AcceptedFinding[]>();
  for (const finding of report.findings) {
    const { id, name } = report.inputs[finding.input - 1];
    const key = JSON.stringify([finding.rule, id ?? name]);
    there.set(key, [...(there.get(key) ?? []), asAccepted(finding, report)]);
  }
  const entries = baseline.entries.flatMap((entry) => {
    const { rule, layout } = entry;
    const same = there.get(JSON.stringify([rule, layout])) ?? [];
    const kept = entry.findings.filter(
      (old) => !canBeMissed(rule, layout, old, looked) || same.some((one) => isSameFact({ ...one }, { ...old })),
    );
    return kept.length === 0 ? [] : [{ ...entry, findings: kept as typeof entry.findings }];
  });
  return { ...baseline, entries };
}

/** What a check looked at, as its report tells it. */
export function lookedAt(
  inputs: Report['inputs'],
  format: Report['verdict']['format'],
  coverage: readonly Coverage[],
): Looked {
  const whole = inputs.filter(({ holes, judged }) => format === 'pass' && holes !== undefined && holes === judged);
  const wholeIds = new Set(whole.map(({ id, name }) => id ?? name));
  const onAll = new Set(
    coverage.filter(({ outcome, judged = 0, of = 0 }) => outcome !== 'not-run' && judged >= of).map(({ rule }) => rule),
  );
  return {
    layouts: new Set(inputs.map(({ id, name }) => id ?? name)),
    isWhole: (layout) => wholeIds.has(layout),
    ranOnAll: (rule) => onAll.has(rule),
  };
}

function asAccepted({ id, record, place, data }: Finding, { inputs }: Report): AcceptedFinding {
  const about =
    id !== undefined
      ? { hole: id }
      : record !== undefined
        ? { record }
        : { pointer: place.pointer ?? `row ${place.row ?? 0}` };
  const facts = data as Record<string, unknown>;
  const other = typeof facts.otherInput === 'number' ? inputs[facts.otherInput - 1] : undefined;
  return { ...about, ...(other && { with: other.id ?? other.name }), data: lastingFacts(facts) };
}

function needWhole({ sample }: Report): void {
  if (sample.listed < sample.total)
    throw new BadBaseline(`The report lists ${sample.listed} of ${sample.total} findings; it must list all of them.`);
}
