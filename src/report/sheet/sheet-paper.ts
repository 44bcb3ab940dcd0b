/** Paper of a sheet, upright. Sizes in mm: ISO 216; ANSI/ASME Y14.1 size A. */
export const SHEET_PAPERS = {
  a4: { width: 210, height: 297, name: 'A4' },
  letter: { width: 215.9, height: 279.4, name: 'letter' },
} as const;

export type SheetPaper = keyof typeof SHEET_PAPERS;

/** Printers leave less than this at the edges free. */
export const MARGIN_MM = 8;

/**
 * Sizes of type, mm of the em square; capitals of the usual sans-serif types are 0.7 of it.
 *
 * What one works by has capitals of 3.5 mm: one two-hundredth of 0.7 m, the length of an arm, and 17 minutes of arc.
 * Source of that share, and of 16 minutes as the least: Federal Aviation Administration, Human Factors web training,
 * "Character and Symbol Size" (hf.faa.gov, VisualDisplays/text/size1a). What one looks up has capitals of 2.5 mm: the
 * same share of half a metre.
 */
export const WORK_TYPE_MM = 5;
export const LOOK_UP_TYPE_MM = 3.6;

/** Distances from base line to base line. */
export const WORK_LINE_MM = 5.7;
export const LOOK_UP_LINE_MM = 4.3;
