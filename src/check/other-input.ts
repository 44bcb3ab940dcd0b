/** Data of a finding that names a record of another input: in which one it is. */
export const OTHER_INPUT = {
  otherInput: 'number of the input of the other record, from 1; absent: the same',
  otherName: 'name of the input of the other record; absent: the same',
} as const;

/** Where another record is, as words behind its id. */
export function inInput(otherName: unknown): string {
  return otherName === undefined ? '' : ` in ${otherName}`;
}
