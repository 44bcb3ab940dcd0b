import type { RuleWords } from '../../../model/language.js';
import { counted } from './counted.js';
import { didYouMean, ring } from './in-words.js';
import { word } from './word.js';

const NONE: ReadonlyMap<unknown, string> = new Map([
  ['parties', 'Ninguna parte'],
  ['sources', 'Ningún documento de origen'],
  ['buildings', 'Ningún edificio'],
  ['levels', 'Ningún nivel'],
  ['areas', 'Ninguna área'],
  ['control', 'Ningún punto de control'],
  ['trades', 'Ninguna especialidad'],
  ['holeTypes', 'Ningún tipo de perforación'],
  ['substrates', 'Ningún elemento de concreto'],
  ['groups', 'Ningún grupo'],
  ['holes', 'Ninguna perforación'],
]);

/** Rules of the stages references and records in Spanish. */
export const records: Readonly<Record<string, RuleWords>> = {
  'duplicate-id': {
    title: 'Dos registros de una clase tienen el mismo id.',
    message: ({ id, first }) => `El id "${id}" ya lo usa ${first}.`,
  },
  'unknown-reference': {
    title: 'Un registro hace referencia a un id que no está definido.',
    message: ({ id, target, nearest }) =>
      `${NONE.get(target) ?? `Ningún registro de ${target}`} tiene el id "${id}".${didYouMean(nearest)}`,
  },
  'lookalike-id': {
    title: 'Dos ids de una clase solo difieren en mayúsculas y minúsculas.',
    message: ({ id, other }) => `El id "${id}" difiere de "${other}" solo en mayúsculas y minúsculas.`,
  },
  'unused-definition': {
    title: 'Nada hace referencia a una definición.',
    message: ({ id, collection }) => `Nada hace referencia a "${id}" en ${collection}.`,
  },
  'ring-not-simple': {
    title: 'Un contorno se cruza o se toca, repite un punto o no tiene área.',
    message: ({ ring: kind, record, fault, edge, other }) => {
      const name = ring(kind, record);
      const [first, second] = [Number(edge) + 1, Number(other) + 1];
      if (fault === 'no-area') return `${name} no tiene área: sus puntos están en una línea.`;
      if (fault === 'repeats-point')
        return `${name} tiene dos puntos seguidos en el mismo lugar: los puntos ${first} y ${second}.`;
      if (fault === 'touches')
        return `${name} tiene un punto sobre otro lado: el punto ${second} está en el lado que sigue al punto ${first}.`;
      return `${name} tiene lados que se cruzan: el lado que sigue al punto ${second} toca el que sigue al punto ${first}.`;
    },
    causeMessage: ({ fault }) => {
      if (fault === 'no-area') return 'Hay contornos sin área: sus puntos están en una línea.';
      if (fault === 'repeats-point') return 'Hay contornos con dos puntos seguidos en el mismo lugar.';
      return fault === 'crosses'
        ? 'Hay contornos que se cruzan a sí mismos.'
        : 'Hay contornos que se tocan a sí mismos.';
    },
  },
  'opening-outside': {
    title: 'Un hueco o una zona no está dentro del contorno de su elemento de concreto.',
    message: ({ ring: kind, substrate }) => `${ring(kind, substrate)} no está del todo dentro de su contorno.`,
    causeMessage: ({ substrate }) =>
      `Hay huecos o zonas del elemento de concreto "${substrate}" que no están dentro de su contorno.`,
  },
  'ring-not-flat': {
    title: 'Los puntos de un contorno no están en un plano, o no en el de la cara.',
    message: ({ ring: kind, record, offset }, say) =>
      kind === 'base'
        ? `${ring(kind, record)} no es plana: hay puntos a ${say.length(offset)} de su plano.`
        : `${ring(kind, record)} tiene un punto a ${say.length(Math.abs(Number(offset)))} del plano de la cara.`,
    causeMessage: ({ ring: kind, offset }, say) =>
      kind === 'base'
        ? 'Hay bases de prismas que no son planas.'
        : `Hay contornos con puntos a ${say.length(Math.abs(Number(offset)))} de los planos de sus caras.`,
  },
  'keep-out-without-extent': {
    title: 'Una zona de exclusión no ocupa espacio.',
    message: ({ keepOut, kind, lacks }) =>
      lacks === 'length'
        ? `El recorrido de la zona de exclusión "${keepOut}" (${word(kind)}) empieza y termina en el mismo lugar.`
        : `La zona de exclusión "${keepOut}" (${word(kind)}) no tiene radio, y no pide ninguna distancia.`,
    causeMessage: ({ lacks }) =>
      lacks === 'length'
        ? 'Hay recorridos de zonas de exclusión que empiezan y terminan en el mismo lugar.'
        : 'Hay zonas de exclusión sin radio que no piden ninguna distancia.',
  },
  'edge-count': {
    title: 'Un contorno no dice de qué clase es cada uno de sus bordes.',
    message: ({ ring: kind, substrate, expected, found }) =>
      `${ring(kind, substrate)} tiene ${expected} bordes y ${found === 0 ? 'no da la clase de ninguno' : `da la clase de ${found}`}.`,
    causeMessage: () => 'Hay contornos que no dan la clase de cada uno de sus bordes.',
  },
  'pattern-count': {
    title: 'El patrón de un grupo no tiene un lugar para cada una de sus perforaciones.',
    message: ({ group, places, members }) =>
      `El patrón del grupo "${group}" tiene ${counted(Number(places), 'lugar', 'lugares')}; ${counted(Number(members), 'perforación nombra', 'perforaciones nombran')} el grupo.`,
    causeMessage: ({ places, members }) =>
      `Hay patrones con ${counted(Number(places), 'lugar', 'lugares')} cuyos grupos tienen ${counted(Number(members), 'perforación', 'perforaciones')}.`,
  },
};
