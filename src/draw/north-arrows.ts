import type { PlanLevel } from './plan-level.js';
import type { PlanWords } from './plan-words.js';
import type { Primitive, Spot, Style } from './primitive.js';

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
    return { primitives: [...axis(0, 'y'), ...axis(90, 'x')], words: [words.noNorth] };
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

/** An axis of the site frame. */
function axis(deg: number, letter: string): Primitive[] {
  const at = turned(deg);
  const style: Style = { stroke: 'ink', strokeWidth: 0.25 };
  return [
    { kind: 'line', from: at(0, -0.6), to: at(0, 0.7), style },
    { kind: 'polygon', rings: [[at(0, 1), at(0.14, 0.62), at(-0.14, 0.62)]], style: { ...style, fill: 'ink' } },
    letterAt(at(0, 1.35), letter, false),
  ];
}

/** An arrow to north, filled or open. */
function arrow(deg: number, letter: string, isFilled: boolean, letterAhead = 1.3): Primitive[] {
  const at = turned(deg);
  return [
    {
      kind: 'polygon',
      rings: [[at(0, 1), at(0.24, -0.6), at(0, -0.38), at(-0.24, -0.6)]],
      style: { stroke: 'ink', strokeWidth: 0.25, fill: isFilled ? 'ink' : 'paper' },
    },
    letterAt(at(0, letterAhead), letter, isFilled),
  ];
}

/** Spots of an arrow that points so many degrees clockwise from up; 1 is its length from the middle. */
function turned(deg: number): (aside: number, ahead: number) => Spot {
  const [sin, cos] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
  return (aside, ahead) => [(aside * cos + ahead * sin) * RADIUS_MM, (aside * sin - ahead * cos) * RADIUS_MM];
}

function letterAt([x, y]: Spot, letter: string, isBold: boolean): Primitive {
  const items = [{ at: [x, y + TYPE_MM * 0.36] as const, text: letter }];
  return { kind: 'text', items, size: TYPE_MM, anchor: 'middle', isBold, style: { fill: 'ink' } };
}
