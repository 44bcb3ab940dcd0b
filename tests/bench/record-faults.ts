/** Ways in which every hole of an invented layout can be wrong, by what stands in its text in place of what. */
const REPLACED = {
  'every-record': [/("axis")/, '"diametre":12,$1'],
  'wrong-type': [/("axis")/, '"diameter":"12",$1'],
  'null-members': [/("axis")/, '"diameter":null,"note":null,$1'],
  'bad-text': [/("id": ?"[^"]*)"/, '$1 "'],
  'no-choice': [/("axis")/, '"moveAllowance":{"along":5,"across":5,"ask":"never"},$1'],
  'lost-digits': [/("axis")/, '"depth":60.00000000000000017,$1'],
  'long-numbers': [/("axis")/, '"depth":60.12345678901234,$1'],
  twice: [/("axis")/, '"note":"a","note":"b",$1'],
  missing: [/"trade": ?"..", ?/, ''],
  'wrong-shape': [/("axis": ?)\[0, ?0, ?1\]/, '$1{"x":0,"y":0,"z":1}'],
} as const;

/** `long-numbers` are valid; `mixed`: each hole has each of the faults with a chance of one in three; `own-names`: an unknown member in each hole, of another name in each. */
export type RecordFault = keyof typeof REPLACED | 'mixed' | 'own-names';

/** The text of hole number `n` with the fault in it. */
export function withFault(hole: string, fault: string, n: number, random: () => number): string {
  if (fault === 'own-names') return hole.replace('"axis"', `"x${n}":12,"axis"`);
  if (fault === 'mixed') {
    const chosen = Object.values(REPLACED).filter(() => random() < 1 / 3);
    return chosen.reduce((text, [from, to]) => text.replace(from, to), hole);
  }
  const [from, to] = REPLACED[fault as keyof typeof REPLACED] ?? [];
  return from === undefined ? hole : hole.replace(from, to);
}
