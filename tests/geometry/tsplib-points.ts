import { existsSync, readFileSync } from 'node:fs';

/** Plane point sets of TSPLIB (G. Reinelt, ORSA Journal on Computing 3, 1991). */
export const tsplibFolder = '../shared/data/tsplib';
export const hasTsplib = existsSync(tsplibFolder);

/** The title of tests on TSPLIB, with the reason where they are skipped. */
export function tsplibTitle(title: string): string {
  return hasTsplib ? title : `${title}, skipped because ${tsplibFolder} is absent`;
}

/** The points of a file: the lines of three numbers. */
export function tsplibPoints(name: string): [x: number, y: number][] {
  return readFileSync(`${tsplibFolder}/${name}.tsp`, 'utf8')
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((numbers) => numbers.length === 3 && numbers.every(Number.isFinite))
    .map(([, x, y]) => [x, y]);
}
