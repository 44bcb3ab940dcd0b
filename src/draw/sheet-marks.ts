import type { Display } from '../generated/layout.js';
import { keyPlan } from './key-plan.js';
import { LEGEND } from './legend.js';
import { moved } from './moved.js';
import { northArrows } from './north-arrows.js';
import type { PlanLevel } from './plan-level.js';
import { NOTE_MM, type PlanSheet, SIDE_WIDTH_MM } from './plan-sheet.js';
import type { PlanView } from './plan-view.js';
import type { PlanWords } from './plan-words.js';
import type { Primitive, Spot, Style } from './primitive.js';
import { scaleBar } from './scale.js';
import { shortened, textWidth, wrapped } from './text-width.js';

const TITLE_TYPE_MM = 4;
const TYPE_MM = LEGEND.type;
const QUIET: Style = { fill: 'ink', fillOpacity: 0.75 };

/** Name of the level and how many holes it has; at the right how the plan is seen. */
export function titleMarks({ name, building, holes }: PlanLevel, sheet: PlanSheet, words: PlanWords): Primitive[] {
  const baseLine = sheet.titleTop + TITLE_TYPE_MM;
  const note = words.seenFromAbove;
  const count = words.holes(holes.count);
  const most = sheet.right - sheet.left - textWidth(note, TYPE_MM) - textWidth(count, TYPE_MM) - 12;
  const title = shortened([building, name ?? words.noLevel].filter(Boolean).join(' · '), TITLE_TYPE_MM, most);
  const behind = sheet.left + textWidth(title, TITLE_TYPE_MM) + 3;
  return [
    text([sheet.left, baseLine], title, TITLE_TYPE_MM, { isBold: true }),
    text([behind, baseLine], count, TYPE_MM, { style: QUIET }),
    text([sheet.right, baseLine], note, TYPE_MM, { anchor: 'end', style: QUIET }),
  ];
}

/** Key plan at the left of the strip. */
export function keyPlanMarks(level: PlanLevel, view: PlanView, { strip }: PlanSheet, words: PlanWords): Primitive[] {
  const box = {
    left: strip.left + 0.5,
    top: strip.top + 5,
    right: strip.left + SIDE_WIDTH_MM.key - 4,
    bottom: strip.top + 29,
  };
  const drawn = keyPlan(level, view.shown, box);
  const title = drawn.length === 0 ? `${words.keyPlan}: ${words.noOutline}` : words.keyPlan;
  const clip = {
    at: [box.left - 0.5, box.top - 0.5] as const,
    width: box.right - box.left + 1,
    height: box.bottom - box.top + 1,
  };
  return [
    text([strip.left, strip.top + TYPE_MM], shortened(title, TYPE_MM, SIDE_WIDTH_MM.key - 2), TYPE_MM, {
      style: QUIET,
    }),
    { kind: 'group', name: 'key-plan', clip, children: drawn },
  ];
}

export function legendMarks({ strip, legend }: PlanSheet): Primitive[] {
  const left = strip.left + SIDE_WIDTH_MM.key;
  const items: { at: Spot; text: string }[] = [];
  const samples = legend.entries.map((entry): Primitive => {
    const [x, y] = [left + entry.x, strip.top + TYPE_MM * 0.7 + entry.y];
    entry.lines.forEach((text, k) => {
      items.push({ at: [x + LEGEND.sample, y + TYPE_MM * 0.36 + k * LEGEND.lineHeight], text });
    });
    return { kind: 'group', children: moved(entry.sample, x + 4.5, y) };
  });
  if (items.length === 0) return [];
  return [...samples, { kind: 'text', items, size: TYPE_MM, style: { fill: 'ink' } }];
}

/** North, scale and scale bar at the right of the strip. */
export function scaleMarks(
  { frame, display }: PlanLevel,
  view: PlanView,
  sheet: PlanSheet,
  words: PlanWords,
): Primitive[] {
  const left = sheet.right - SIDE_WIDTH_MM.scale;
  const { top } = sheet.strip;
  const north = northArrows(frame, words);
  return [
    { kind: 'group', name: 'north', children: moved(north.primitives, left + 9, top + 10.5) },
    {
      kind: 'text',
      items: north.words.map((line, k) => ({
        at: [left + 20, top + 8.5 + k * 4] as const,
        text: shortened(line, TYPE_MM, SIDE_WIDTH_MM.scale - 20),
      })),
      size: TYPE_MM,
      style: { fill: 'ink' },
    },
    ...barMarks([left + 1, top + 19], SIDE_WIDTH_MM.scale - 10, view.denominator, display),
    text([left, top + 28.5], shortened(words.scale(sheet.scale.name), TYPE_MM, SIDE_WIDTH_MM.scale), TYPE_MM, {}),
  ];
}

/** A bar of two halves, the first one filled. */
function barMarks([x, y]: Spot, most: number, denominator: number, display: Display | undefined): Primitive[] {
  const { lengthMm, value, unit } = scaleBar(most * denominator, display);
  const width = lengthMm / denominator;
  const style: Style = { stroke: 'ink', strokeWidth: 0.2 };
  const labels: [number, string][] = [
    [0, '0'],
    [width / 2, String(value / 2)],
    [width, `${value} ${unit}`],
  ];
  return [
    { kind: 'rect', at: [x, y], width, height: 1.4, style: { ...style, fill: 'paper' } },
    { kind: 'rect', at: [x, y], width: width / 2, height: 1.4, style: { ...style, fill: 'ink' } },
    {
      kind: 'text',
      items: labels.map(([along, label]) => ({ at: [x + along, y + 4.2] as const, text: label })),
      size: TYPE_MM,
      anchor: 'middle',
      style: { fill: 'ink' },
    },
  ];
}

/** What the plan does not show, as lines below the strip. */
export function noteLines(notes: readonly string[], { left, right }: PlanSheet): string[] {
  return wrapped(notes.join(' '), TYPE_MM, right - left);
}

export function noteMarks(lines: readonly string[], { left, strip }: PlanSheet): Primitive[] {
  if (lines.length === 0) return [];
  const items = lines.map((line, k) => ({ at: [left, strip.bottom + NOTE_MM * (k + 0.8)] as const, text: line }));
  return [{ kind: 'text', items, size: TYPE_MM, style: { fill: 'ink' } }];
}

function text(
  at: Spot,
  content: string,
  size: number,
  { anchor, isBold, style = { fill: 'ink' } }: TextLook,
): Primitive {
  return { kind: 'text', items: [{ at, text: content }], size, anchor, isBold, style };
}

interface TextLook {
  anchor?: 'start' | 'middle' | 'end';
  isBold?: boolean;
  style?: Style;
}
