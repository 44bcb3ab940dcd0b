import type { Symbol as Mark } from '../../generated/shared.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import type { Rule } from '../rule.js';
import type { Site } from '../site.js';

/** Marks of one text that another one is compared with. */
const MOST_COMPARED = 1000;

const MEMBERS = ['text', 'shape', 'colour', 'rgb'] as const;

export const symbolClash: Rule = {
  id: 'symbol-clash',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'Two trades have the same mark.',
  why: 'On the ceiling nobody can tell whose hole it is, and one trade hangs its pipes from the anchors of the other.',
  mend: 'Agree on marks for the whole project, with another text or shape for one of the two.',
  accept: 'When the two never mark in one room.',
  needs: 'A symbol.',
  data: {
    other: 'id of the first trade with the mark',
    ...OTHER_INPUT,
    mark: 'the mark in words',
  },
  message: ({ other, otherName, mark }) => `The mark ${mark} is that of trade "${other}"${inInput(otherName)} too.`,
  example: {
    form: 'members',
    bad: '"trades": [\n  { "id": "FP", "name": "Sprinkler", "symbol": { "text": "S" } },\n  { "id": "ST", "name": "Steam", "symbol": { "text": "S", "shape": "circle" } }\n]',
    good: '"trades": [\n  { "id": "FP", "name": "Sprinkler", "symbol": { "text": "SP" } },\n  { "id": "ST", "name": "Steam", "symbol": { "text": "ST", "shape": "circle" } }\n]',
  },
  checkSite(site, run) {
    const byText = new Map<string, number[]>();
    for (let name = 0; name < site.trades.count; name++) {
      const mark = site.trades.records[name]?.symbol;
      const place = site.trades.places[name];
      if (mark === undefined || place === undefined) continue;
      const key = mark.text === undefined ? '' : fold(mark.text);
      const before = byText.get(key) ?? [];
      byText.set(key, before);
      const other = before.find((earlier) => isSame(mark, site.trades.records[earlier]?.symbol));
      if (before.length < MOST_COMPARED) before.push(name);
      else if (other === undefined) {
        run.leftOut('more marks with one text than are compared');
        continue;
      }
      run.judged(1);
      if (other === undefined) continue;
      const data = { ...otherTrade(site, name, other), mark: inWords(mark) };
      run.atRecord(place.part, 'trades', place.index, { member: 'symbol', data, cause: `${data.other} ${data.mark}` });
    }
  },
};

/** Whether nothing that both marks have tells them apart, and they share something. */
function isSame(a: Mark, b: Mark | undefined): boolean {
  if (b === undefined || (a.text === undefined) !== (b.text === undefined)) return false;
  let shares = false;
  for (const member of MEMBERS) {
    const [mine, other] = [a[member], b[member]];
    if (mine === undefined || other === undefined) continue;
    if (fold(mine) !== fold(other)) return false;
    shares = true;
  }
  return shares;
}

/** Only the letters A to Z: what people read alike in a mark, whatever the language. */
function fold(text: string): string {
  return text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
}

function inWords({ text, shape, colour, rgb }: Mark): string {
  const parts = [text === undefined ? undefined : `"${text}"`, shape, colour ?? rgb];
  return parts.filter((part) => part !== undefined).join(', ');
}

function otherTrade({ trades }: Site, name: number, other: number) {
  const from = trades.places[other]?.part;
  const isHere = from === undefined || from === trades.places[name]?.part;
  return { other: trades.id(other), ...(!isHere && { otherInput: from.input + 1, otherName: from.name }) };
}
