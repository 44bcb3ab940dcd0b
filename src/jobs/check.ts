import type { ColumnProfile } from '../generated/column-profile.js';
import type { Report } from '../generated/report.js';
import { Checker, type CheckOptions, type OpenOptions } from './checker.js';

export {
  Checker,
  type CheckOptions,
  DEFAULT_SAMPLE_LIMIT,
  type Hasher,
  type OpenOptions,
} from './checker.js';
export { BadRuleOption } from './rule-options.js';
export { BadSeverity } from './severities.js';

/** One input of a check that is at hand as a whole. */
export interface CheckInput {
  /** Name in the report, such as the file's. */
  name: string;
  data: string | Uint8Array;
  /** Profile to read a table with; absent: the input is JSON. */
  profile?: ColumnProfile;
}

const encoder = new TextEncoder();

/** A checker whose bytes are pushed in; see {@link Checker}. */
export function createChecker(options: CheckOptions = {}): Checker {
  return new Checker(options);
}

/** Checks inputs that are at hand as a whole. */
export function check(inputs: readonly CheckInput[], options: CheckOptions = {}): Report {
  const checker = new Checker(options);
  for (const { name, data, profile } of inputs) {
    const bytes = typeof data === 'string' ? encoder.encode(data) : data;
    const source = { byteLength: bytes.length, slice: (start: number, end: number) => bytes.subarray(start, end) };
    checker.open(name, { profile, source });
    checker.write(bytes);
    checker.close();
  }
  return checker.end();
}

/** Options of {@link checkStream}. */
export interface StreamOptions extends CheckOptions, OpenOptions {
  name: string;
  /** Stops the check; the promise is then rejected with the signal's reason. */
  signal?: AbortSignal;
  /** Told the number of bytes taken so far, after each chunk. */
  onProgress?: (bytes: number) => void;
}

/** Checks one input that arrives in chunks. */
export async function checkStream(chunks: AsyncIterable<Uint8Array>, options: StreamOptions): Promise<Report> {
  const checker = new Checker(options);
  checker.open(options.name, options);
  let bytes = 0;
  for await (const chunk of chunks) {
    options.signal?.throwIfAborted();
    checker.write(chunk);
    bytes += chunk.length;
    options.onProgress?.(bytes);
  }
  options.signal?.throwIfAborted();
  return checker.end();
}
