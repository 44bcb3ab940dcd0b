import type { RuleWords } from '../../../model/language.js';
import { inInput } from './in-words.js';
import { word } from './word.js';

/** Rules of the stage control about trades, tags and hole types in Spanish. */
export const trades: Readonly<Record<string, RuleWords>> = {
  'symbol-clash': {
    title: 'Dos especialidades tienen la misma marca.',
    message: ({ other, otherName, mark }) =>
      `La marca ${mark} es también la de la especialidad "${other}"${inInput(otherName)}.`,
  },
  'tag-clash': {
    title: 'Dos perforaciones de una especialidad y un nivel tienen la misma etiqueta.',
    message: ({ tag, other, otherName, trade, level }) =>
      `La perforación "${other}"${inInput(otherName)} de la especialidad "${trade}" también tiene la etiqueta "${tag}"${onLevel(level)}.`,
    causeMessage: ({ trade, level }) =>
      `Hay perforaciones de la especialidad "${trade}" que comparten etiqueta${onLevel(level)}.`,
  },
  'bit-not-for-type': {
    title: 'La broca es de otro tamaño que la perforación.',
    message: ({ holeType, nominal, bit, diameter }, say) =>
      `La broca "${nominal}" del tipo "${holeType}" mide ${say.length(bit)}; la perforación, ${say.length(diameter)}.`,
    causeMessage: ({ bit, diameter }, say) =>
      `Hay tipos de perforación que nombran una broca de ${say.length(bit)} para una perforación de ${say.length(diameter)}.`,
  },
  'rod-size-as-hole': {
    title: 'El diámetro de la perforación es el tamaño de la varilla roscada.',
    message: ({ holeType, rod, diameter, principle }, say) =>
      `La perforación del tipo "${holeType}" mide ${say.length(diameter)}, lo mismo que su varilla roscada "${rod}"; la perforación de las anclas ${word(principle)} es más ancha que la varilla.`,
    causeMessage: ({ size, principle }, say) =>
      `Hay tipos de perforación con una perforación tan ancha como su varilla roscada, ${say.length(size)}; la perforación de las anclas ${word(principle)} es más ancha que la varilla.`,
  },
  'approval-missing': {
    title: 'El tipo de un ancla posinstalada no nombra ninguna aprobación.',
    message: ({ holeType, principle }) =>
      `El tipo de perforación "${holeType}" (ancla ${word(principle)}) no nombra ninguna aprobación.`,
    causeMessage: () => 'Hay tipos de perforación para anclas posinstaladas que no nombran ninguna aprobación.',
  },
  'approval-expired': {
    title: 'La aprobación de un tipo de perforación ha vencido.',
    message: ({ holeType, number, expires, day }) =>
      `La aprobación "${number}" del tipo "${holeType}" era válida hasta ${expires}; hoy es ${day}.`,
    causeMessage: ({ number, expires, day }) =>
      `Hay tipos de perforación que nombran la aprobación "${number}", que era válida hasta ${expires}; hoy es ${day}.`,
  },
};

function onLevel(level: unknown): string {
  return level === undefined ? '' : ` en el nivel "${level}"`;
}
