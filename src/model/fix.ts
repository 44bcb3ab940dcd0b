import type { LayoutModel } from './layout-model.js';

/** One operation of a JSON Patch (RFC 6902), of the kinds that fixes need. */
export type FixOperation =
  | { op: 'add' | 'replace'; path: string; value: unknown }
  | { op: 'remove'; path: string }
  /** Gives a member another name in the same object. */
  | { op: 'move'; from: string; path: string };

/** The one right answer to a finding. The pointers are those of the document as it was checked. */
export interface Fix {
  /** Operations, none of which moves what another one points to. Absent: the document as JSON stays as it is. */
  patch?: FixOperation[];
  /** Whether the byte order mark goes, which no JSON Patch can say. */
  byteOrderMark?: 'remove';
  /** Whether it changes where or how a hole is made: only who asks for that gets it. */
  geometry?: true;
}

/** What a rule may look at to find the one right answer to a finding of its own. */
export interface Sight {
  /**
   * Tokens from the root of the layout, also of one within another document, or else of the document, to the value at
   * fault, or to the member whose name is at fault.
   */
  readonly tokens: readonly string[];
  /** JSON Pointer from the root of the document. */
  readonly pointer: string;
  readonly value: unknown;
  /** The object or array that holds the value; undefined at the root. */
  readonly holder: unknown;
  /** The record of the value; see {@link LayoutModel}. */
  readonly record: unknown;
  /** The layout that was checked; undefined for a document of another kind. */
  readonly layout: LayoutModel | undefined;
  /** The value as it stands in the text. */
  written(): string;
  /** Names that the schema knows in the object that holds an unknown one; none elsewhere. */
  knownNames(): readonly string[];
  /** Pointers of all references to an id whose text is not as an id has to be; broken records count. */
  untidyReferences(collection: string, id: string): readonly string[];
}

/** A text without blanks at its ends and in Unicode normalisation form C, as ids have to be. */
export function tidyId(id: string): string {
  return id.trim().normalize('NFC');
}
