import { type LegendEntry, type PlacedLegend, placeLegend } from './legend.js';
import type { PaperBox } from './plan-view.js';
import { roundScale, type Scale, type UnitSystem } from './scale.js';

/** Where a plan is drawn: a sheet lying on its side, or so wide and no higher than so much, mm. */
export type PlanPaper = 'A4' | 'Letter' | { readonly width: number; readonly mostHeight: number };

/** Sizes lying on their side: ISO 216; ANSI/ASME Y14.1 size A. */
const SHEETS = { A4: { width: 297, height: 210 }, Letter: { width: 279.4, height: 215.9 } } as const;
const MARGIN_MM = 8;
/** Without a sheet the page has a margin of its own. */
const LEAST_MARGIN_MM = 0.5;
const LEAST_WIDTH_MM = 100;
const TITLE_MM = 7.5;
const LEAST_PLAN_MM = 40;
/** What marks at the edge of the plan need around it. */
const RIM_MM = 2;

export const SIDE_WIDTH_MM = { key: 36, scale: 46 } as const;
const LEAST_STRIP_MM = 30;
export const NOTE_MM = 3.4;
/** Lines of notes that a sheet keeps room for. */
const NOTE_LINES = 2;

/** The parts of a sheet: title above, plan, and below it key plan, legend, north and scale in a strip, then notes. */
export interface PlanSheet {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly titleTop: number;
  /** Frame around the plan; the names of gridlines stand inside of it around the box of the plan itself. */
  readonly frame: PaperBox;
  readonly plan: PaperBox;
  readonly strip: PaperBox;
  readonly legend: PlacedLegend;
  readonly scale: Scale;
  /** Height of the whole with so many lines of notes. */
  heightWith(noteLines: number): number;
}

/**
 * Divides a sheet and chooses the largest round scale at which the piece of the level fits.
 *
 * @param size of the piece, mm of the building
 * @param names room for the names of gridlines: at the start above the plan and to its left, at the end below and to its right, mm
 */
export function planSheet(
  paper: PlanPaper,
  size: { readonly width: number; readonly height: number },
  names: { readonly start: number; readonly end: number },
  legend: readonly LegendEntry[],
  system: UnitSystem,
): PlanSheet {
  const isSheet = typeof paper === 'string';
  const sheet = isSheet ? SHEETS[paper] : { width: Math.max(paper.width, LEAST_WIDTH_MM), height: paper.mostHeight };
  const margin = isSheet ? MARGIN_MM : LEAST_MARGIN_MM;
  const [left, right] = [margin, sheet.width - margin];
  const legendWidth = right - left - SIDE_WIDTH_MM.key - SIDE_WIDTH_MM.scale - 4;
  const placed = placeLegend(legend, legendWidth);
  const stripHeight = Math.max(LEAST_STRIP_MM, placed.height + 2);
  const below = 3 + stripHeight + NOTE_LINES * NOTE_MM + margin;
  const top = margin + TITLE_MM;
  const mostHeight = Math.max(sheet.height - top - below, LEAST_PLAN_MM);
  const [start, end] = [Math.max(names.start, RIM_MM), Math.max(names.end, RIM_MM)];
  const rim = start + end;
  const inside = { width: right - left - rim, height: mostHeight - rim };
  const scale = roundScale(Math.max(size.width / inside.width, size.height / inside.height), system);
  const needed = Math.max(Math.ceil(size.height / scale.denominator) + rim, LEAST_PLAN_MM);
  const height = isSheet ? mostHeight : Math.min(mostHeight, needed);
  const frame = { left, top, right, bottom: top + height };
  const stripTop = frame.bottom + 3;
  const strip = { left, top: stripTop, right, bottom: stripTop + stripHeight };
  return {
    width: sheet.width,
    left,
    right,
    titleTop: margin,
    frame,
    plan: { left: left + start, top: top + start, right: right - end, bottom: frame.bottom - end },
    strip,
    legend: placed,
    scale,
    heightWith: (noteLines) =>
      isSheet && noteLines <= NOTE_LINES ? sheet.height : Math.ceil(strip.bottom + noteLines * NOTE_MM + margin),
  };
}
