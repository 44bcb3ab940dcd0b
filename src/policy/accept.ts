import type { Acceptance, AcceptedFinding, Baseline } from '../generated/baseline.js';
import type { Finding, Report } from '../generated/report.js';
import { SCHEMA_VERSION } from '../generated/schema-tables.js';
import { BadBaseline, isSameFact, lastingFacts } from './baseline.js';

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
    (entry.findings as AcceptedFinding[]).push(asAccepted(finding));
    entries.set(key, entry);
  }
  const rest = before ?? { ahx: SCHEMA_VERSION, kind: 'baseline', entries: [] };
  return { ...rest, entries: [...rest.entries, ...entries.values()] };
}

/**
 * The baseline without the findings that are there no more; entries that have none left go. Entries whose layout
 * or rule was not checked stay as they are, and so do those that have run out.
 *
 * @throws BadBaseline where the report does not list all of its findings, or was made without this baseline
 */
export function pruneBaseline(baseline: Baseline, report: Report): Baseline {
  needWhole(report);
  const states = report.baseline?.entries;
  if (states?.length !== baseline.entries.length) throw new BadBaseline('The report was made without this baseline.');
  const entries = baseline.entries.flatMap((entry, k) => {
    const { state, matched } = states[k];
    if (state === 'not-checked' || matched === entry.findings.length) return [entry];
    const there = report.findings.filter(
      ({ rule, input }) =>
        rule === entry.rule && (report.inputs[input - 1].id ?? report.inputs[input - 1].name) === entry.layout,
    );
    const kept = entry.findings.filter((old) => there.some((finding) => isSameFact(asAccepted(finding), { ...old })));
    return kept.length === 0 ? [] : [{ ...entry, findings: kept as typeof entry.findings }];
  });
  return { ...baseline, entries };
}

function asAccepted({ id, place, data }: Finding): AcceptedFinding {
  const about = id !== undefined ? { hole: id } : { pointer: place.pointer ?? `row ${place.row ?? 0}` };
  return { ...about, data: lastingFacts(data as Record<string, unknown>) };
}

function needWhole({ sample }: Report): void {
  if (sample.listed < sample.total)
    throw new BadBaseline(`The report lists ${sample.listed} of ${sample.total} findings; it must list all of them.`);
}
