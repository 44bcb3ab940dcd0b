import type { Finding, Place, Report } from '../generated/report.js';
import type { FormPhrases } from '../model/form-phrases.js';
import { fileUri } from './file-uri.js';
import type { Fingerprints } from './fingerprints.js';
import { type SarifMessage, sarifMessage } from './sarif-message.js';

/** Name under which the fingerprint of a finding stands; another way to make it gets another number. */
export const FINGERPRINT = 'ahxFinding/v1';

/** A severity as SARIF calls it. */
export const LEVELS = { error: 'error', warning: 'warning', info: 'note' } as const;

/** What results of one report have in common. */
export interface ResultContext {
  report: Report;
  /** Index of a rule in the list of the tool, by id. */
  ruleIndex: ReadonlyMap<string, number>;
  fingerprints: Fingerprints;
  /** Class of a cause, by its number. */
  classOf: ReadonlyMap<number, string>;
  forms: FormPhrases;
}

interface Location {
  id?: number;
  physicalLocation?: { artifactLocation: ArtifactLocation; region?: Record<string, number> };
  logicalLocations?: { name?: string; fullyQualifiedName?: string }[];
  message?: SarifMessage;
}

interface ArtifactLocation {
  uri: string;
  index: number;
}

/** A finding as a result of SARIF; its members that hold nothing are undefined. */
export function sarifResult(finding: Finding, context: ResultContext): Record<string, unknown> {
  const { rule, severity, message, place, id, tag, cause, input, accepted, source } = finding;
  const { report, ruleIndex, fingerprints, classOf, forms } = context;
  const { row, column, sheet } = place;
  return {
    ruleId: rule,
    ruleIndex: ruleIndex.get(rule),
    level: LEVELS[severity],
    message: sarifMessage(message),
    locations: [locationOf(place, id, input, report)],
    relatedLocations: related(finding, report, forms),
    partialFingerprints: { [FINGERPRINT]: fingerprints.next(finding) },
    suppressions: suppressions(report, accepted, forms),
    properties: {
      ...{ class: classOf.get(cause), cause, hole: id, tag },
      ...(row !== undefined && { row, column, sheet }),
      sourceRow: source?.row,
    },
  };
}

/** The file of an input, and its number among the artifacts. */
export function artifactLocation(input: number, { inputs }: Report): ArtifactLocation | undefined {
  const { name } = inputs[input - 1] ?? {};
  return name === undefined ? undefined : { uri: fileUri(name), index: input - 1 };
}

function locationOf(place: Place, id: string | undefined, input: number, report: Report): Location {
  const file = artifactLocation(input, report);
  const region = regionOf(place);
  const logical = { ...(id && { name: id }), ...(place.pointer && { fullyQualifiedName: place.pointer }) };
  return {
    ...(file && { physicalLocation: { artifactLocation: file, ...(region && { region }) } }),
    ...(Object.keys(logical).length > 0 && { logicalLocations: [logical] }),
  };
}

/** A row is not always a line, so that a place in a table has no region. */
function regionOf({ line, column, byte, row }: Place): Record<string, number> | undefined {
  if (line !== undefined) return { startLine: line, ...(column !== undefined && { startColumn: column }) };
  return byte === undefined || row !== undefined ? undefined : { byteOffset: byte };
}

/** The record of another input that the finding is about too. */
function related({ data }: Finding, report: Report, forms: FormPhrases): Location[] | undefined {
  const { other, otherInput } = data;
  const file = typeof otherInput === 'number' ? artifactLocation(otherInput, report) : undefined;
  if (file === undefined) return undefined;
  const name = typeof other === 'string' && other !== '' ? other : undefined;
  const logical = name === undefined ? {} : { logicalLocations: [{ name }] };
  return [
    { id: 1, physicalLocation: { artifactLocation: file }, ...logical, message: sarifMessage(forms.otherRecord(name)) },
  ];
}

/** Where a baseline was applied every result has a list, empty where nothing accepts it (SARIF 2.1.0, 3.27.23). */
function suppressions(
  { baseline }: Report,
  accepted: number | undefined,
  forms: FormPhrases,
): Record<string, unknown>[] | undefined {
  if (accepted === undefined) return baseline === undefined ? undefined : [];
  const entry = baseline?.entries[accepted - 1];
  const { owner, expires, question } = entry ?? {};
  return [
    {
      ...{ kind: 'external', status: 'accepted' },
      justification: sarifMessage(entry?.reason ?? forms.entry(accepted)).text,
      properties: { owner, expires, question },
    },
  ];
}
