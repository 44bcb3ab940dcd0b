import { svgText } from '../../draw/svg.js';
import type { CrewSheet } from './crew-sheets.js';

/** Paints of the page, which a file by itself does not have. They stand in attributes alone: texts have no quotes. */
const PAINTS = /\b(fill|stroke|color)="(currentColor|var\(--plan-paper,Canvas\)|var\(--plan-mark,currentColor\))"/g;

/** A sheet as an SVG file of its own: black on white, the size of the paper, no script, nothing from outside. */
export function sheetSvg({ drawing, number }: CrewSheet): string {
  const { width, height } = drawing;
  const white = { kind: 'rect', at: [0, 0], width, height, style: { fill: '#ffffff' } } as const;
  const svg = svgText({ ...drawing, children: [white, ...drawing.children] }, { idPrefix: `s${number}-` });
  return `${svg.replace(PAINTS, (_, name: string, paint: string) => `${name}="${paint.includes('paper') ? '#ffffff' : '#000000'}"`)}\n`;
}
