import type { Symbol as Mark } from '../generated/shared.js';
import type { Circle, Paint, Polygon, Spot, Style, Text } from './primitive.js';
import { textWidth } from './text-width.js';

/** How a mark of a project is drawn. */
export interface SymbolLook {
  /** Corners of the shape in a circle of radius 1; absent: the circle. */
  readonly corners?: readonly Spot[];
  /** Whether the project's word for the shape is not one of those that can be drawn. */
  readonly isUnknownShape: boolean;
  /** Colour on screens; absent: none given. */
  readonly rgb?: Paint;
  readonly letters?: string;
  /** Equal for looks of one shape. */
  readonly shape: string;
}

/** Corners of a regular shape, the first one at an angle clockwise from the top. */
function regular(count: number, firstDeg = 0, inner?: number): Spot[] {
  const steps = inner === undefined ? count : 2 * count;
  return Array.from({ length: steps }, (_, k): Spot => {
    const angle = ((firstDeg + (360 * k) / steps) * Math.PI) / 180;
    const radius = inner !== undefined && k % 2 === 1 ? inner : 1;
    return [radius * Math.sin(angle), -radius * Math.cos(angle)];
  });
}

const PLUS: readonly Spot[] = (() => {
  const [a, b] = [0.32, 0.95];
  return [
    [-a, -b],
    [a, -b],
    [a, -a],
    [b, -a],
    [b, a],
    [a, a],
    [a, b],
    [-a, b],
    [-a, a],
    [-b, a],
    [-b, -a],
    [-a, -a],
  ];
})();

function turned(spots: readonly Spot[], deg: number): Spot[] {
  const [sin, cos] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
  return spots.map(([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
}

/**
 * Words for shapes that can be drawn. They are plain words of geometry: which trade has which shape is said by the
 * layout alone.
 */
const SHAPES: ReadonlyMap<string, readonly Spot[] | undefined> = new Map([
  ['circle', undefined],
  ['round', undefined],
  ['triangle', regular(3)],
  ['triangle down', regular(3, 180)],
  ['square', regular(4, 45)],
  ['box', regular(4, 45)],
  ['diamond', regular(4)],
  ['pentagon', regular(5)],
  ['hexagon', regular(6)],
  ['octagon', regular(8, 22.5)],
  ['star', regular(5, 0, 0.45)],
  ['plus', PLUS],
  ['cross', turned(PLUS, 45)],
  ['x', turned(PLUS, 45)],
]);

/** How the symbol of a trade is drawn; without one it is a plain circle. */
export function symbolLook(symbol: Mark | undefined): SymbolLook {
  const shape = symbol?.shape?.trim().toLowerCase() ?? 'circle';
  const corners = SHAPES.get(shape);
  const rgb = symbol?.rgb !== undefined && /^#[0-9A-Fa-f]{6}$/.test(symbol.rgb) ? (symbol.rgb as Paint) : undefined;
  const letters = symbol?.text;
  const isUnknownShape = !SHAPES.has(shape);
  return { corners, isUnknownShape, rgb, letters, shape: corners === undefined ? 'circle' : shape };
}

/** The sign of a look, `size` mm wide about 0, 0; with its letters in it where that is asked for. */
export function symbolSign(
  { corners, rgb, letters }: SymbolLook,
  size: number,
  hasLetters: boolean,
): (Polygon | Circle | Text)[] {
  const radius = corners === undefined ? size / 2 : size * 0.58;
  const isOpen = hasLetters && letters !== undefined;
  // Letters stand on paper in a coloured rim; without letters the shape is filled, with a rim that shows on any paper.
  const style: Style = isOpen
    ? { fill: 'paper', stroke: rgb ?? 'ink', strokeWidth: 0.35 }
    : { fill: rgb ?? 'paper', stroke: 'ink', strokeWidth: Math.min(0.22, size / 8) };
  const shape: Polygon | Circle =
    corners === undefined
      ? { kind: 'circle', at: [0, 0], radius, style }
      : { kind: 'polygon', rings: [corners.map(([x, y]): Spot => [x * radius, y * radius])], style };
  if (!isOpen) return [shape];
  const type = Math.min(size * 0.55, (size * 0.85) / Math.max(textWidth(letters, 1), 0.1));
  const text: Text = {
    kind: 'text',
    items: [{ at: [0, type * 0.36], text: letters }],
    size: type,
    anchor: 'middle',
    isBold: true,
    style: { fill: 'ink' },
  };
  return [shape, text];
}
