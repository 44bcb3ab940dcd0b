import { xmlText } from '../model/xml-text.js';
import { coarseLength, paperLength, pathData } from './path-data.js';
import type { Drawing, Group, Marks, Paint, Primitive, Style, Text } from './primitive.js';

/** How a drawing becomes SVG text. */
export interface SvgOptions {
  /** Start of every `id` in the text; another one for each drawing of a page. Letters, digits and hyphens, a letter first. */
  readonly idPrefix: string;
}

/**
 * A drawing as one `svg` element, in HTML or as a file of its own: no script, no style sheet, nothing from outside.
 *
 * Colours come from the page: strokes and letters from `color`, the background from `--plan-paper`, what is pointed
 * out from `--plan-mark`. Without them it is what the page has for text and background. Texts are escaped; characters
 * that XML cannot carry and those that turn the direction of writing become `\u` and four digits.
 */
export function svgText({ width, height, label, children }: Drawing, { idPrefix }: SvgOptions): string {
  if (!/^[A-Za-z][A-Za-z0-9-]*$/.test(idPrefix)) throw new RangeError(`No start of an id: ${idPrefix}.`);
  const writer = new Writer(idPrefix);
  const body = children.map((child) => writer.primitive(child)).join('');
  const [w, h] = [paperLength(width), paperLength(height)];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" role="img" ` +
    `aria-label="${xmlText(label)}" font-family="sans-serif" fill="none" stroke-miterlimit="8">${body}</svg>`
  );
}

class Writer {
  private ids = 0;

  constructor(private readonly prefix: string) {}

  primitive(one: Primitive): string {
    switch (one.kind) {
      case 'rect': {
        const corner = one.corner === undefined ? '' : ` rx="${paperLength(one.corner)}"`;
        return `<rect${box(one)}${corner}${styleText(one.style)}/>`;
      }
      case 'line': {
        const d = pathData([[one.from, one.to]], false);
        return `<path d="${d}"${styleText(one.style)}/>`;
      }
      case 'polyline':
        return `<path d="${pathData(one.lines, false)}"${styleText(one.style)}/>`;
      case 'polygon':
        return `<path d="${pathData(one.rings, true)}"${styleText(one.style)}/>`;
      case 'circle': {
        const [x, y] = one.at.map(paperLength);
        return `<circle cx="${x}" cy="${y}" r="${paperLength(one.radius)}"${styleText(one.style)}/>`;
      }
      case 'text':
        return this.text(one);
      case 'marks':
        return this.marks(one);
      case 'group':
        return this.group(one);
    }
  }

  private text({ items, size, anchor = 'start', isBold, hasRim, style }: Text): string {
    const look =
      ` font-size="${paperLength(size)}"` +
      (anchor === 'start' ? '' : ` text-anchor="${anchor}"`) +
      (isBold === true ? ' font-weight="600"' : '') +
      (hasRim === true ? ' paint-order="stroke" stroke-linejoin="round"' : '') +
      styleText(hasRim === true ? { stroke: 'paper', strokeWidth: size / 4, ...style } : style);
    const spots = items.map(({ at, text }) => {
      const place = `x="${coarseLength(at[0])}" y="${coarseLength(at[1])}"`;
      return { place, text: xmlText(text) };
    });
    if (spots.length === 1) return `<text ${spots[0].place}${look}>${spots[0].text}</text>`;
    return `<g${look}>${spots.map(({ place, text }) => `<text ${place}>${text}</text>`).join('')}</g>`;
  }

  /** Each corner of one path shows the sign: about ten bytes a mark. */
  private marks({ sign, at }: Marks): string {
    if (at.length === 0) return '';
    const id = this.newId();
    const body = sign.map((part) => this.primitive(part)).join('');
    return (
      `<marker id="${id}" markerUnits="userSpaceOnUse" markerWidth="1" markerHeight="1" overflow="visible">${body}</marker>` +
      `<path d="${pathData([at], false)}" marker-mid="url(#${id})" marker-end="url(#${id})"` +
      // Of a single point start and end are one.
      `${at.length === 1 ? '' : ` marker-start="url(#${id})"`}/>`
    );
  }

  private group({ name, clip, style = {}, children }: Group): string {
    const body = children.map((child) => this.primitive(child)).join('');
    const className = name === undefined ? '' : ` class="${xmlText(name)}"`;
    if (clip === undefined) return `<g${className}${styleText(style)}>${body}</g>`;
    const id = this.newId();
    const frame = `<clipPath id="${id}"><rect${box(clip)}/></clipPath>`;
    return `${frame}<g${className} clip-path="url(#${id})"${styleText(style)}>${body}</g>`;
  }

  private newId(): string {
    this.ids++;
    return `${this.prefix}${this.ids}`;
  }
}

function box({ at, width, height }: { at: readonly [number, number]; width: number; height: number }): string {
  const [x, y, w, h] = [at[0], at[1], width, height].map(paperLength);
  return ` x="${x}" y="${y}" width="${w}" height="${h}"`;
}

const PAINTS: ReadonlyMap<string, string> = new Map([
  ['ink', 'currentColor'],
  ['paper', 'var(--plan-paper,Canvas)'],
  ['mark', 'var(--plan-mark,currentColor)'],
  ['none', 'none'],
]);

function paintText(paint: Paint): string {
  const text = PAINTS.get(paint) ?? (/^#[0-9A-Fa-f]{6}$/.test(paint) ? paint : undefined);
  if (text === undefined) throw new RangeError(`No colour: ${paint}.`);
  return text;
}

function styleText({ stroke, strokeWidth, strokeOpacity, dash, isRound, fill, fillOpacity }: Style): string {
  return (
    (fill === undefined ? '' : ` fill="${paintText(fill)}"`) +
    (fillOpacity === undefined ? '' : ` fill-opacity="${paperLength(fillOpacity)}"`) +
    (stroke === undefined ? '' : ` stroke="${paintText(stroke)}"`) +
    (strokeWidth === undefined ? '' : ` stroke-width="${paperLength(strokeWidth)}"`) +
    (strokeOpacity === undefined ? '' : ` stroke-opacity="${paperLength(strokeOpacity)}"`) +
    (dash === undefined ? '' : ` stroke-dasharray="${dash.map(paperLength).join(' ')}"`) +
    (isRound === true ? ' stroke-linecap="round" stroke-linejoin="round"' : '')
  );
}
