import { typeWidth } from './fit-lines.js';
import { labelled, paragraphs, type SheetBlock, stacked, TYPE_MM } from './sheet-block.js';
import type { SheetCaps } from './sheet-caps.js';
import type { SheetContext } from './sheet-context.js';
import type { SheetTexts } from './sheet-texts.js';

/** Room for the labels of what one looks up. */
const LABEL_MM = 26;

type Box = { left: number; width: number };

/** What one works by, between plan and list. */
export function workBlock(texts: SheetTexts, { words }: SheetContext, box: Box, caps: SheetCaps): SheetBlock {
  const { labels } = words;
  const conditions = texts.conditions.length === 0 ? [] : [texts.conditions.join(' ')];
  const parts = [
    { label: labels.move, said: texts.moves, most: caps.move },
    { label: labels.conditions, said: conditions, most: caps.conditions },
  ].filter(({ said }) => said.length > 0);
  const labelWidth = Math.max(...parts.map(({ label }) => typeWidth(label, TYPE_MM.work, true))) + 3;
  const blocks = parts.map(({ label, said, most }) => labelled(label, said, { ...box, labelWidth }, 'work', most));
  return stacked(blocks);
}

/** Holds, what the check found and what is other than before, above the list. */
export function findingsBlock(texts: SheetTexts, { words }: SheetContext, box: Box, caps: SheetCaps): SheetBlock {
  const part = { ...box, labelWidth: LABEL_MM };
  const { labels } = words;
  const [first, ...general] = texts.findings;
  const rest = general.length - caps.general;
  const findings = [
    ...(rest > 0 ? [`${first} ${words.moreGeneral(rest)}`] : [first]),
    ...general.slice(0, caps.general),
  ];
  return stacked([
    labelled(labels.holds, [texts.holds], part, 'look-up', 2),
    labelled(labels.findings, findings, part, 'look-up', caps.findings),
    labelled(
      labels.changes,
      texts.changes.length === 0 ? [] : [texts.changes.join(' ')],
      part,
      'look-up',
      caps.changes,
    ),
    { heightMm: 0.7, isCut: false, draw: () => [] },
  ]);
}

/** What one looks up, below the list. */
export function footBlock(texts: SheetTexts, { words }: SheetContext, box: Box, caps: SheetCaps): SheetBlock {
  const part = { ...box, labelWidth: LABEL_MM };
  const { labels } = words;
  const shown = texts.noDrill.slice(0, caps.keepOuts >> 1);
  const rest = texts.noDrill.length - shown.length;
  const symbols = `${texts.symbols.join('; ')}. ${labels.order}: ${texts.order} ${texts.reading}`;
  const bores = texts.bores.length === 0 ? [] : [texts.bores.join(' ')];
  return stacked([
    paragraphs([texts.noDrillHead], box, 'look-up', 2, true),
    paragraphs([...shown, ...(rest > 0 ? [words.moreKeepOuts(rest)] : [])], box, 'look-up', caps.keepOuts > 6 ? 2 : 1),
    labelled(labels.bores, bores, part, 'look-up', caps.bores),
    labelled(labels.substrates, texts.substrates, part, 'look-up', caps.substrate),
    labelled(labels.symbols, [symbols], part, 'look-up', caps.symbol),
    labelled(labels.checkLimit, [`${texts.checkLimit[1]} ${words.checkRule}`], part, 'look-up', 3),
    labelled(labels.call, [texts.call.join(' ')], part, 'look-up', caps.call),
    paragraphs([`${labels.caution}: ${words.caution}`], box, 'look-up', 6),
  ]);
}

export function leftOutBlock(texts: readonly string[], { words }: SheetContext, box: Box, caps: SheetCaps): SheetBlock {
  const part = { ...box, labelWidth: LABEL_MM };
  return labelled(words.labels.leftOut, texts.length === 0 ? [] : [texts.join(' ')], part, 'look-up', caps.leftOut);
}
