/** A place on paper: millimetres from the upper left corner, y downward. */
export type Spot = readonly [x: number, y: number];

/**
 * What a thing is painted with: `ink` is the text colour of the page, `paper` its background, `mark` what points
 * things out; else a colour of the project, `#` and six hexadecimal digits.
 */
export type Paint = 'ink' | 'paper' | 'mark' | 'none' | `#${string}`;

/** How a thing is painted; what is absent is taken from the group around it. Lengths in millimetres of paper. */
export interface Style {
  readonly stroke?: Paint;
  readonly strokeWidth?: number;
  readonly strokeOpacity?: number;
  /** Lengths of dashes and gaps in turn. */
  readonly dash?: readonly number[];
  /** Whether strokes have round ends and corners; else they are cut square and mitred. */
  readonly isRound?: boolean;
  readonly fill?: Paint;
  readonly fillOpacity?: number;
}

export interface Rect {
  readonly kind: 'rect';
  /** Upper left corner. */
  readonly at: Spot;
  readonly width: number;
  readonly height: number;
  /** Radius of the corners. */
  readonly corner?: number;
  readonly style: Style;
}

export interface Line {
  readonly kind: 'line';
  readonly from: Spot;
  readonly to: Spot;
  readonly style: Style;
}

/** Open lines, all in one stroke: where they cross, an opacity counts once. */
export interface Polyline {
  readonly kind: 'polyline';
  readonly lines: readonly (readonly Spot[])[];
  readonly style: Style;
}

/** Closed rings, painted as one by the non-zero rule. */
export interface Polygon {
  readonly kind: 'polygon';
  readonly rings: readonly (readonly Spot[])[];
  readonly style: Style;
}

export interface Circle {
  readonly kind: 'circle';
  readonly at: Spot;
  readonly radius: number;
  readonly style: Style;
}

/** Texts of one look; each is one line. */
export interface Text {
  readonly kind: 'text';
  readonly items: readonly { readonly at: Spot; readonly text: string }[];
  /** Height of the type. */
  readonly size: number;
  /** Which part of a text stands at its spot; absent: its start. Upright, the spot is on the base line. */
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly isBold?: boolean;
  /** Whether the text stands on a rim of paper, so that lines below it do not disturb. */
  readonly hasRim?: boolean;
  readonly style: Style;
}

/** One sign at many places. */
export interface Marks {
  readonly kind: 'marks';
  /** The sign, drawn about the spot 0, 0. */
  readonly sign: readonly (Rect | Line | Polyline | Polygon | Circle | Text)[];
  readonly at: readonly Spot[];
}

export interface Group {
  readonly kind: 'group';
  /** Word for what is in it, for people who look at the text of the drawing and for style sheets. */
  readonly name?: string;
  /** Box outside of which nothing of the group is seen. */
  readonly clip?: { readonly at: Spot; readonly width: number; readonly height: number };
  readonly style?: Style;
  readonly children: readonly Primitive[];
}

/** A thing on paper. */
export type Primitive = Rect | Line | Polyline | Polygon | Circle | Text | Marks | Group;

/** A drawing: its size in millimetres of paper and the things on it, those below first. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who cannot see it. */
  readonly label: string;
  readonly children: readonly Primitive[];
}
