import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CORPUS } from './derive-cases.js';

/** The manifest of the conformance corpus, after `manifest.schema.json` beside it. */
export interface CorpusManifest {
  ahx: string;
  kind: 'conformance-manifest';
  note: string;
  /** Rules that apply to everything that can be checked, with the reason. */
  alwaysApplicable: Record<string, string>;
  cases: CorpusCase[];
  conversions: CorpusConversion[];
}

/** An input and what a checker says of it. */
export interface CorpusCase {
  id: string;
  /** Relative to the corpus, like `profile`. */
  file: string;
  profile?: string;
  version: string;
  clauses: string[];
  rule: string;
  kind: 'pass' | 'fail' | 'na';
  catches: string;
  options?: {
    purpose?: 'for-review' | 'for-drilling' | 'for-closeout';
    severities?: Record<string, 'error' | 'warning' | 'info' | 'off'>;
    extensions?: string[];
    sampleLimit?: number;
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

/** The manifest of the corpus; without cases where there is none yet. */
export function readManifest(root: string): CorpusManifest {
  const path = join(root, MANIFEST);
  if (!existsSync(path)) {
    return { ahx: '', kind: 'conformance-manifest', note: '', alwaysApplicable: {}, cases: [], conversions: [] };
  }
  return JSON.parse(readFileSync(path, 'utf8')) as CorpusManifest;
}
