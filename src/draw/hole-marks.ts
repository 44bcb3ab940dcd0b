import type { LegendEntry } from './legend.js';
import { usualSpacing } from './mark-spacing.js';
import type { PlanHoles, PlanLevel } from './plan-level.js';
import type { PlanView } from './plan-view.js';
import type { PlanWords } from './plan-words.js';
import type { Primitive, Spot, Style } from './primitive.js';
import { type SymbolLook, symbolLook, symbolSign } from './symbol-sign.js';
import { shortened } from './text-width.js';

const LARGEST_MM = 2.4;
const LEAST_MM = 0.9;
/** In smaller marks letters cannot be read; they may overlap a little. */
const WITH_LETTERS_MM = 3;
const LEAST_FOR_LETTERS_MM = 1.8;
const MOST_MARKS = 15_000;
const MOST_TRADES = 12;
const GROUP: Style = { stroke: 'ink', strokeWidth: 0.2, strokeOpacity: 0.75 };

/** The holes of a plan. */
export interface HoleMarks {
  readonly primitives: readonly Primitive[];
  /** Width of a mark, mm. */
  readonly size: number;
  /** Whether letters that tell trades apart found no room. */
  readonly lettersLeftOut: boolean;
  /** Numbers and spots of the holes that are drawn by themselves, in their order. */
  readonly drawn: readonly { readonly hole: number; readonly at: Spot }[];
  readonly outside: number;
  /** Holes at the plan position of an earlier one. */
  readonly inOnePlace: number;
  /** Holes so near to an earlier one that both are one mark, and how near, mm of paper. */
  readonly merged: number;
  readonly mergedMm: number;
}

/** Looks of the trades, and whether letters must stand in the marks because nothing else tells two of them apart. */
export interface TradeLooks {
  readonly looks: readonly SymbolLook[];
  /** Trades that have holes here, in their order. */
  readonly used: readonly number[];
  readonly needLetters: boolean;
  /** Whether two cannot be told apart at all, or by colour alone, which paper may not show. */
  readonly alike: 'no' | 'but-for-colour' | 'all';
}

export function tradeLooks({ trades, holes }: PlanLevel): TradeLooks {
  const looks = trades.map(({ symbol }) => symbolLook(symbol));
  const isUsed = new Uint8Array(trades.length);
  for (let i = 0; i < holes.count; i++) isUsed[holes.trade[i]] = 1;
  const used = looks.flatMap((_, k) => (isUsed[k] === 1 ? [k] : []));
  const countOf = (part: (look: SymbolLook) => unknown) =>
    new Set(used.map((k) => JSON.stringify(part(looks[k])))).size;
  const shapes = countOf(({ shape }) => shape);
  const marks = countOf(({ shape, letters }) => [shape, letters]);
  const isSeen = countOf(({ shape, letters, rgb }) => [shape, letters, rgb]) === used.length;
  const alike = marks === used.length ? 'no' : isSeen ? 'but-for-colour' : 'all';
  return { looks, used, needLetters: marks > shapes, alike };
}

/** Draws the holes of each trade in the symbol of its project, as large as their spacing allows. */
export function holeMarks(level: PlanLevel, { looks, used, needLetters }: TradeLooks, view: PlanView): HoleMarks {
  const { holes } = level;
  const { drawn, ...counts } = placesOf(holes, view);
  const spacing = usualSpacing(drawn.map(({ at }) => at));
  const fitting = Math.min(Math.max(spacing * 0.92, LEAST_MM), LARGEST_MM);
  const hasLetters = needLetters && fitting >= LEAST_FOR_LETTERS_MM;
  const size = hasLetters ? WITH_LETTERS_MM : fitting;
  const byTrade = looks.map((): Spot[] => []);
  for (const { hole, at } of drawn) byTrade[holes.trade[hole]].push(at);
  const marks = used.map(
    (k): Primitive => ({ kind: 'marks', sign: symbolSign(looks[k], size, hasLetters), at: byTrade[k] }),
  );
  const lettersLeftOut = needLetters && !hasLetters;
  return { primitives: [...groupLines(holes, view), ...marks], size, lettersLeftOut, drawn, ...counts };
}

/** Holes that are drawn by themselves. Where they are too many, one stands for those around it, the same way each time. */
function placesOf(holes: PlanHoles, view: PlanView) {
  const inside: { hole: number; at: Spot }[] = [];
  const positions = new Set<string>();
  let inOnePlace = 0;
  for (let hole = 0; hole < holes.count; hole++) {
    const at = view.spot(holes.x[hole], holes.y[hole]);
    if (!view.holds(at)) continue;
    const before = positions.size;
    if (positions.add(`${holes.trade[hole]} ${holes.x[hole]} ${holes.y[hole]}`).size > before)
      inside.push({ hole, at });
    else inOnePlace++;
  }
  const outside = holes.count - inside.length - inOnePlace;
  let drawn = inside;
  let mergedMm = 0;
  while (drawn.length > MOST_MARKS) {
    mergedMm = mergedMm === 0 ? 0.1 : mergedMm * 2;
    const cells = new Set<string>();
    drawn = inside.filter(({ hole, at: [x, y] }) => {
      const before = cells.size;
      return cells.add(`${holes.trade[hole]} ${Math.round(x / mergedMm)} ${Math.round(y / mergedMm)}`).size > before;
    });
  }
  return { drawn, outside, inOnePlace, merged: inside.length - drawn.length, mergedMm };
}

/** A thin line from hole to hole of each group. */
function groupLines({ count, group, x, y }: PlanHoles, view: PlanView): Primitive[] {
  const members = new Map<number, [number, number][]>();
  let corners = 0;
  for (let i = 0; i < count && corners < MOST_MARKS; i++) {
    if (group[i] < 0) continue;
    const known = members.get(group[i]);
    if (known === undefined) members.set(group[i], [[x[i], y[i]]]);
    else known.push([x[i], y[i]]);
    corners++;
  }
  const lines = [...members.values()].flatMap((points) =>
    view.line(points.length > 2 ? [...points, points[0]] : points),
  );
  return lines.length === 0 ? [] : [{ kind: 'polyline', lines, style: GROUP }];
}

/** Legend of the trades and groups. */
export function holeLegend(
  level: PlanLevel,
  { looks, used, needLetters }: TradeLooks,
  words: PlanWords,
): LegendEntry[] {
  const { trades, holes } = level;
  let hasGroups = false;
  for (let i = 0; i < holes.count; i++) {
    hasGroups ||= holes.group[i] >= 0;
  }
  const entries = used.slice(0, MOST_TRADES).map((k): LegendEntry => {
    const { id, name, symbol } = trades[k];
    const look = looks[k];
    const about = [
      symbol === undefined ? words.noSymbol : undefined,
      look.letters,
      symbol?.colour,
      look.isUnknownShape && symbol?.shape !== undefined
        ? words.unknownShape(shortened(symbol.shape, 1, 12))
        : undefined,
    ].filter((part) => part !== undefined);
    const mark = about.length === 0 ? '' : ` (${about.join(', ')})`;
    return {
      sample: symbolSign(look, needLetters ? WITH_LETTERS_MM : LARGEST_MM, needLetters),
      text: `${name === '' ? id : name}${mark}`,
    };
  });
  if (used.length > MOST_TRADES) entries.push({ sample: [], text: words.moreTrades(used.length - MOST_TRADES) });
  if (hasGroups) {
    const sample: Primitive[] = [
      { kind: 'line', from: [-3, 0], to: [3, 0], style: GROUP },
      { kind: 'circle', at: [-3, 0], radius: 0.6, style: { fill: 'ink' } },
      { kind: 'circle', at: [3, 0], radius: 0.6, style: { fill: 'ink' } },
    ];
    entries.push({ sample, text: words.group });
  }
  return entries;
}
