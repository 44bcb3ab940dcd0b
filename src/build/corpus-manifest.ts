import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CORPUS } from './derive-cases.js';

/** The manifest of the conformance corpus, after `manifest.schema.json` beside it, with what its parts hold. */
export interface CorpusManifest {
  /** Rules that apply to everything that can be checked, with the reason. */
  alwaysApplicable: Record<string, string>;
  /** Files of the parts, relative to the corpus, in the order in which their cases are taken. */
  parts: string[];
  cases: CorpusCase[];
  conversions: CorpusConversion[];
}

/** One file of the corpus that holds cases, after `cases.schema.json`. */
interface CorpusPart {
  /** Rule that all its cases are about; absent where it holds conversions. */
  rule?: string;
  cases?: (Omit<CorpusCase, 'part' | 'files'> & { file?: string; files?: string[] })[];
  conversions?: CorpusConversion[];
}

/** Inputs and what a checker says of them. */
export interface CorpusCase {
  id: string;
  /** Where it stands: file of the part, and the rule that the part is about. */
  part: { file: string; rule?: string };
  /** What is checked together, in order; relative to the corpus, like `profile`. */
  files: string[];
  /** Profile that the tables among them are read with. */
  profile?: string;
  version: string;
  clauses: string[];
  rule: string;
  kind: 'pass' | 'fail' | 'na';
  /** Other rules that have findings where it fails. */
  besides?: string[];
  catches: string;
  options?: {
    purpose?: 'for-review' | 'for-drilling' | 'for-closeout';
    severities?: Record<string, 'error' | 'warning' | 'info' | 'off'>;
    extensions?: string[];
    sampleLimit?: number;
    ruleOptions?: Record<string, Record<string, number | string>>;
    asOf?: string;
  };
  verdict: { format: Verdict; site: Verdict };
  /** What became of `rule`. */
  coverage: { outcome: 'passed' | 'failed' | 'not-applicable' | 'not-run'; judged?: number; of?: number };
  findings: CorpusFinding[];
  counts?: { error: number; warning: number; info: number };
  /** Number of causes. */
  causes?: number;
}

type Verdict = 'pass' | 'fail' | 'cannot-judge';

/** A finding; what is absent is not compared. */
export interface CorpusFinding {
  rule: string;
  severity: 'error' | 'warning' | 'info';
  /** Number of the input, from 1; absent: 1. */
  input?: number;
  pointer?: string;
  line?: number;
  column?: number;
  byte?: number;
  row?: number;
  /** Some of the data of the finding. */
  data?: Record<string, unknown>;
}

/** An input and what a converter makes of it. */
export interface CorpusConversion {
  id: string;
  file: string;
  profile?: string;
  version: string;
  to: 'layout' | 'csv' | 'geojson';
  /** Profile that a table is written by. */
  toProfile?: string;
  clauses: string[];
  catches: string;
  /** Values at JSON Pointers in the output; `absent` where there is none. */
  expect?: { pointer: string; value?: unknown; absent?: true }[];
  /** Rows of the table that is written, cell by cell. */
  rows?: string[][];
  /** Some of the things that are listed as lost. */
  losses?: { field: string; count: number }[];
}

export const MANIFEST = `${CORPUS}/manifest.json`;

/** The manifest of the corpus with its parts; without cases where there is none yet. */
export function readManifest(root: string): CorpusManifest {
  const path = join(root, MANIFEST);
  if (!existsSync(path)) return { alwaysApplicable: {}, parts: [], cases: [], conversions: [] };
  const { alwaysApplicable, parts } = JSON.parse(readFileSync(path, 'utf8')) as CorpusManifest;
  const read = parts.map((file) => ({ file, ...readPart(root, file) }));
  return {
    alwaysApplicable,
    parts,
    cases: read.flatMap(({ file: partFile, rule, cases = [] }) =>
      cases.map(({ file, files, ...one }) => ({
        ...one,
        part: { file: partFile, rule },
        files: files ?? (file === undefined ? [] : [file]),
      })),
    ),
    conversions: read.flatMap(({ conversions = [] }) => conversions),
  };
}

function readPart(root: string, file: string): CorpusPart {
  return JSON.parse(readFileSync(join(root, CORPUS, file), 'utf8')) as CorpusPart;
}
