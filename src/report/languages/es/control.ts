import type { RuleWords } from '../../../model/language.js';
import { controlOf, inInput } from './in-words.js';
import { word } from './word.js';

/** Rules of the stage control about control points and tolerances in Spanish. */
export const control: Readonly<Record<string, RuleWords>> = {
  'control-missing': {
    title: 'Un trazo no tiene ningún punto de control en uso.',
    message: () => 'El trazo no tiene puntos de control desde los cuales trazarlo.',
  },
  'control-too-few': {
    title: 'Hay menos de tres puntos de control para estacionarse.',
    message: ({ count, level }) =>
      count === 1
        ? `${controlOf(level)} está en un solo lugar: una estación no obtiene de él ninguna orientación. Agregue dos puntos.`
        : `${controlOf(level)} está en solo dos lugares: no se notarían etiquetas cambiadas, una imagen en espejo ni un error a lo ancho de su línea. Agregue un tercer punto, fuera de esa línea.`,
    causeMessage: ({ count }) =>
      count === 1
        ? 'Hay niveles con control en un solo lugar: una estación no obtiene de él ninguna orientación. Agregue dos puntos en cada uno.'
        : 'Hay niveles con control en solo dos lugares: no se notarían etiquetas cambiadas, una imagen en espejo ni un error a lo ancho de su línea. Agregue en cada uno un tercer punto, fuera de esa línea.',
  },
  'control-coincident': {
    title: 'Dos puntos de control están en el mismo lugar.',
    message: ({ point, other, distance }, say) =>
      `El punto de control "${point}" está en el lugar de "${other}" (a ${say.length(distance)} en planta).`,
    causeMessage: ({ other }) => `Hay puntos de control en el lugar de "${other}".`,
  },
  'control-collinear': {
    title: 'Los puntos de control están en una línea, o casi.',
    message: ({ level, width, length }, say) =>
      `${controlOf(level)} está a lo largo de una línea de ${say.length(length)}: ningún punto se aparta de ella más de ${say.length(width)}.`,
    causeMessage: ({ width, length }, say) =>
      `Hay niveles con control a lo largo de una línea de ${say.length(length)}: ningún punto se aparta de ella más de ${say.length(width)}.`,
  },
  'control-ambiguous': {
    title: 'El control coincide consigo mismo cuando se gira.',
    message: ({ level, turns, tolerance, count }, say) =>
      `${controlOf(level)}, ${count} lugares, coincide consigo mismo dentro de ${say.length(tolerance)} si se gira ${turnsInWords(turns as number[])}: ningún residuo muestra etiquetas cambiadas así.`,
    causeMessage: ({ turns, tolerance, count }, say) =>
      `Hay niveles con control, ${count} lugares, que coincide consigo mismo dentro de ${say.length(tolerance)} si se gira ${turnsInWords(turns as number[])}: ningún residuo muestra etiquetas cambiadas así.`,
  },
  'control-mirrored': {
    title: 'El control de un trazo es la imagen en espejo del de otro.',
    message: ({ otherName, shared }) =>
      `Los ${shared} puntos de control que también están${inInput(otherName)} coinciden con aquellos solo como imagen en espejo.`,
  },
  'control-disagrees': {
    title: 'Un punto de control tiene otras coordenadas en otro trazo del mismo marco de referencia.',
    message: ({ point, otherName, what, distance, tolerance, count, shared }, say) =>
      `El punto de control "${point}" está a ${say.length(distance)} en ${word(what)} de donde está${inInput(otherName)} (como máximo ${say.length(tolerance)}); difieren ${count} de ${shared}.`,
  },
  'tolerance-finer-than-control': {
    title: 'Una tolerancia de posición es más fina de lo que el control puede dar.',
    message: ({ holeType, hole, tolerance, least, point }, say) =>
      `La tolerancia ${say.length(tolerance)} de la perforación "${hole}", tipo "${holeType}", es más fina que los ${say.length(least)} dentro de los cuales está su control en 95 de 100 casos (punto de control "${point}").`,
    causeMessage: ({ tolerance, least, point }, say) =>
      `Hay tipos de perforación que piden ${say.length(tolerance)}, más fino que los ${say.length(least)} dentro de los cuales está su control en 95 de 100 casos (punto de control "${point}").`,
  },
  'tolerance-missing': {
    title: 'Nada dice con qué exactitud debe quedar una perforación.',
    message: ({ holeType }) =>
      `Ni la perforación ni su tipo "${holeType}" tienen una tolerancia de posición en planta.`,
    causeMessage: ({ holeType }) => `Hay perforaciones del tipo "${holeType}" sin tolerancia de posición en planta.`,
  },
};

const MOST_TURNS = 3;

function turnsInWords(turns: readonly number[]): string {
  const said = turns.slice(0, MOST_TURNS).map((turn) => String(Math.round(turn * 100) / 100));
  return `${said.join(', ')}${turns.length > MOST_TURNS ? ' …' : ''} grados`;
}
