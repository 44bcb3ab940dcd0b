/**
 * What a stage has to say about the input before a message is made from it.
 *
 * A stage names the rule and gives the facts; severity, wording and line numbers are added when the
 * report is made, so that no stage knows another.
 */
export interface Observation {
  /** Id of the rule, such as `unknown-member`. */
  rule: string;
  /** Where it is. */
  at: Spot;
  /** What the message is made from; the keys belong to the rule. */
  data: Record<string, unknown>;
  /**
   * What findings of this rule share when they have one cause, such as the name of the missing
   * definition. Findings with the same rule and cause become one cause in the report.
   */
  cause: string;
  /** How many findings it stands for: at the one place, or anywhere where they are only counted; absent: 1. */
  count?: number;
  /** Where the rule's own severity does not fit this case. */
  severity?: Severity;
  /** Number of the entry of a baseline that accepts it, from 1. */
  accepted?: number;
}

export type Severity = 'error' | 'warning' | 'info';

/** A spot in an input: in JSON by pointer and byte, in a table by row and column. */
export interface Spot {
  /** JSON Pointer (RFC 6901) from the root of the document; absent for tables. */
  pointer?: string;
  /** Byte offset in the input, from 0; absent for tables. */
  byte?: number;
  /** Offset of the record that it belongs to. */
  recordByte?: number;
  /** With `recordByte`, where `byte` is not known: JSON Pointer from the record to the value. The way is gone when the place is needed. */
  within?: string;
  /** With `within`: whether the name of the member is meant, not its value. */
  isName?: boolean;
  /** Row of the table, from 1; the header and rows before it count. */
  row?: number;
  /** Number of the column of the table, from 1. */
  column?: number;
  /** Index of the hole it belongs to; absent where it belongs to none. */
  hole?: number;
}

/**
 * Takes observations as a stage makes them.
 *
 * It may answer `true` to say that further observations of the same rule, cause and severity will only be
 * counted, wherever they are and whatever their data: then they may come together, as one with a `count`. It
 * answers `'accepted'` for a finding that the project has accepted.
 */
export type Observe = (observation: Observation) => unknown;
