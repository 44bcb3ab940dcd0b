import type { RuleWords } from '../../../model/language.js';
import { inInput, ofOtherTrade } from './in-words.js';
import { word } from './word.js';

/** Rules of the stage geometry about holes, bores and groups among each other in Spanish. */
export const holes: Readonly<Record<string, RuleWords>> = {
  'holes-coincide': {
    title: 'Dos perforaciones están en el mismo lugar.',
    message: ({ other, otherName, distance, trade, otherTrade, sameTrade }, say) =>
      sameTrade === true
        ? `La perforación está en el lugar de la perforación "${other}"${inInput(otherName)} de la misma especialidad (a ${say.length(distance)}).`
        : `La perforación de la especialidad "${trade}" está en el lugar de la perforación "${other}"${inInput(otherName)} de la especialidad "${otherTrade}" (a ${say.length(distance)}). Nombre un solo dueño.`,
    causeMessage: ({ otherName, trade, otherTrade, sameTrade }) =>
      sameTrade === true
        ? `Hay perforaciones de la especialidad "${trade}" en el lugar de otras${inInput(otherName)} de la misma especialidad.`
        : `Hay perforaciones de la especialidad "${trade}" en el lugar de perforaciones de la especialidad "${otherTrade}"${inInput(otherName)}. Nombre un solo dueño para cada una.`,
  },
  'holes-too-close': {
    title: 'Dos perforaciones están más cerca una de otra de lo que permiten sus tipos.',
    message: ({ other, otherName, distance, limit, source, trade, otherTrade }, say) =>
      `La perforación está a ${say.length(distance)} de la perforación "${other}"${inInput(otherName)}${ofOtherTrade(trade, otherTrade)}; se necesitan al menos ${say.length(limit)} (${source}).`,
    causeMessage: ({ holeType, otherType, otherName, trade, otherTrade, limit, source }, say) =>
      trade === otherTrade
        ? `Hay perforaciones del tipo "${holeType}" a menos de ${say.length(limit)} de perforaciones del tipo "${otherType}"${inInput(otherName)} (${source}).`
        : `Hay perforaciones de la especialidad "${trade}" y del tipo "${holeType}" a menos de ${say.length(limit)} de perforaciones de la especialidad "${otherTrade}" y del tipo "${otherType}"${inInput(otherName)} (${source}).`,
  },
  'bores-overlap': {
    title: 'Dos perforaciones se encuentran dentro del concreto.',
    message: ({ other, otherName, trade, otherTrade, overlap }, say) =>
      `La perforación se encuentra con la perforación "${other}"${inInput(otherName)}${ofOtherTrade(trade, otherTrade)} dentro del concreto: sus paredes se traslapan ${say.length(overlap)}.`,
    causeMessage: ({ otherName, trade, otherTrade }) =>
      trade === otherTrade
        ? `Hay perforaciones de la especialidad "${trade}" que se encuentran unas con otras${otherName === undefined ? '' : `, también con las de ${otherName},`} dentro del concreto.`
        : `Hay perforaciones de la especialidad "${trade}" que se encuentran con perforaciones de la especialidad "${otherTrade}"${inInput(otherName)} dentro del concreto.`,
  },
  'near-existing-bore': {
    title: 'Una perforación está demasiado cerca de una perforación que ya existe en el concreto.',
    message: ({ bore, otherName, end, fault, distance, limit, source, overlap }, say) => {
      const which = `la perforación existente "${bore}"${inInput(otherName)} (${word(end)})`;
      if (fault === 'same-place')
        return `La perforación está en el lugar de ${which}. Diga a cuál de las dos se refiere.`;
      if (fault === 'runs-into')
        return `La perforación se encuentra con ${which}: sus paredes se traslapan ${say.length(overlap)}.`;
      return `La perforación está a ${say.length(distance)} de ${which}; se necesitan al menos ${say.length(limit)} (${source}).`;
    },
    causeMessage: ({ end, fault, holeType, otherName }) => {
      const which = `perforaciones existentes (${ENDS.get(end) ?? end})${inInput(otherName)}`;
      if (fault === 'same-place') return `Hay perforaciones del tipo "${holeType}" en el lugar de ${which}.`;
      return fault === 'runs-into'
        ? `Hay perforaciones del tipo "${holeType}" que se encuentran con ${which}.`
        : `Hay perforaciones del tipo "${holeType}" demasiado cerca de ${which}.`;
    },
  },
  'group-pattern': {
    title: 'Las perforaciones de un grupo no están como dice su patrón.',
    message: ({ group, fault, member, other, distance, inPattern, tolerance }, say) => {
      const allowed = `(tolerancia ${say.length(tolerance)})`;
      if (fault === 'distance')
        return `Las perforaciones "${member}" y "${other}" del grupo "${group}" están a ${say.length(distance)} una de otra; en su patrón, a ${say.length(inPattern)} ${allowed}.`;
      if (fault === 'place')
        return `La perforación "${member}" del grupo "${group}" está a ${say.length(distance)} de su lugar en el patrón ${allowed}, y ni girar ni poner en espejo el grupo lo arregla.`;
      const how = fault === 'mirrored' ? 'en espejo, al otro lado de su dirección' : 'girado respecto de su dirección';
      return `El grupo "${group}" coincide con su patrón solo ${how}: la perforación "${member}" está a ${say.length(distance)} de su lugar ${allowed}.`;
    },
    causeMessage: ({ fault, kind }) => {
      if (fault === 'distance')
        return `En grupos de clase ${word(kind)} hay perforaciones más cerca o más lejos entre sí que en el patrón de su grupo.`;
      if (fault === 'place')
        return `En grupos de clase ${word(kind)} hay perforaciones fuera de su lugar en el patrón de su grupo.`;
      return `Hay grupos de clase ${word(kind)} ${fault === 'mirrored' ? 'en espejo' : 'girados'} respecto de su patrón.`;
    },
  },
  'group-soffits-differ': {
    title: 'Las perforaciones de un grupo están en caras de distinta altura.',
    message: ({ group, member, other, difference, substrate, otherSubstrate }, say) =>
      `Las caras de las perforaciones "${member}" y "${other}" del grupo "${group}" se separan ${say.length(difference)} (${facesOf(substrate, otherSubstrate)}).`,
    causeMessage: ({ substrate, otherSubstrate }) =>
      `Hay grupos en caras de distinta altura (${facesOf(substrate, otherSubstrate)}); las varillas roscadas tienen distinto largo.`,
  },
  'spans-movement-joint': {
    title: 'Hay perforaciones de un mismo grupo a los dos lados de una junta de movimiento.',
    message: ({ group, other, substrate }) =>
      `Una junta de movimiento del elemento de concreto "${substrate}" pasa entre la perforación y la perforación "${other}" del mismo grupo "${group}".`,
    causeMessage: ({ substrate }) =>
      `Una junta de movimiento del elemento de concreto "${substrate}" pasa entre perforaciones de un mismo grupo.`,
  },
};

const ENDS: ReadonlyMap<unknown, string> = new Map([
  ['complete', 'completas'],
  ['partial', 'parciales'],
  ['abandoned', 'abandonadas'],
]);

function facesOf(substrate: unknown, other: unknown): string {
  return substrate === other
    ? `partes del elemento de concreto "${substrate}"`
    : `elementos de concreto "${substrate}" y "${other}"`;
}
