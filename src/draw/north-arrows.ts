import type { PlanLevel } from './plan-level.js';
import type { PlanWords } from './plan-words.js';
import type { Primitive, Spot } from './primitive.js';

const RADIUS_MM = 5.4;
const TYPE_MM = 2.4;
/** Directions nearer than this are one arrow. */
const SAME_DEG = 0.01;

/** North as the frame gives it, and what the letters mean. */
export interface NorthArrows {
  /** Drawn about 0, 0 in a circle of 10 mm. */
  readonly primitives: readonly Primitive[];
  readonly words: readonly string[];
}

/** A filled arrow to true north and an open one to project north; without both the axes of the site frame. */
export function northArrows({ trueNorthDeg, projectNorthDeg }: PlanLevel['frame'], words: PlanWords): NorthArrows {
  const { trueNorthLetter, projectNorthLetter } = words;
  if (trueNorthDeg === undefined && projectNorthDeg === undefined) {
    return { primitives: [...arrow(0, 'y', false, 1.35), ...arrow(90, 'x', false, 1.35)], words: [words.noNorth] };
  }
  const circle: Primitive = {
    kind: 'circle',
    at: [0, 0],
    radius: RADIUS_MM * 0.72,
    style: { stroke: 'ink', strokeWidth: 0.15, strokeOpacity: 0.6 },
  };
  const said = [
    ...(trueNorthDeg === undefined ? [] : [words.trueNorth]),
    ...(projectNorthDeg === undefined ? [] : [words.projectNorth]),
  ];
  const isOne =
    trueNorthDeg !== undefined &&
    projectNorthDeg !== undefined &&
    Math.abs(((trueNorthDeg - projectNorthDeg + 540) % 360) - 180) < SAME_DEG;
  if (isOne) {
    return {
      primitives: [circle, ...arrow(trueNorthDeg, `${trueNorthLetter} = ${projectNorthLetter}`, true)],
      words: said,
    };
  }
  return {
    primitives: [
      circle,
      ...(projectNorthDeg === undefined ? [] : arrow(projectNorthDeg, projectNorthLetter, false, 1.72)),
      ...(trueNorthDeg === undefined ? [] : arrow(trueNorthDeg, trueNorthLetter, true)),
    ],
    words: said,
  };
}

/** @param deg clockwise from up */
function arrow(deg: number, letter: string, isFilled: boolean, letterAt = 1.3): Primitive[] {
  const [sin, cos] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
  const at = (aside: number, ahead: number): Spot => [
    (aside * cos + ahead * sin) * RADIUS_MM,
    (aside * sin - ahead * cos) * RADIUS_MM,
  ];
  const [x, y] = at(0, letterAt);
  return [
    {
      kind: 'polygon',
      rings: [[at(0, 1), at(0.24, -0.6), at(0, -0.38), at(-0.24, -0.6)]],
      style: { stroke: 'ink', strokeWidth: 0.25, fill: isFilled ? 'ink' : 'paper' },
    },
    {
      kind: 'text',
      items: [{ at: [x, y + TYPE_MM * 0.36], text: letter }],
      size: TYPE_MM,
      anchor: 'middle',
      isBold: isFilled,
      style: { fill: 'ink' },
    },
  ];
}
