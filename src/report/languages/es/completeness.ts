import type { RuleWords } from '../../../model/language.js';
import { inInput } from './in-words.js';
import { words } from './word.js';

/** Rules of the stage completeness in Spanish. */
export const completeness: Readonly<Record<string, RuleWords>> = {
  'depth-missing': {
    title: 'Una perforación ciega no tiene profundidad.',
    message: ({ holeType }) => `Ni la perforación ciega ni su tipo "${holeType}" tienen profundidad.`,
    causeMessage: ({ holeType }) =>
      `Hay perforaciones ciegas del tipo "${holeType}" sin profundidad, y el tipo tampoco la tiene.`,
  },
  'substrate-missing': {
    title: 'Una perforación no dice en qué se perfora.',
    message: () => 'La perforación no dice en qué concreto se hace.',
    causeMessage: () => 'Hay perforaciones que no dicen en qué concreto se hacen.',
  },
  'through-without-above': {
    title: 'No se nombra a nadie que proteja la cara opuesta de una perforación pasante.',
    message: () => 'La perforación es pasante, y no se nombra a nadie que proteja la cara opuesta.',
    causeMessage: ({ trade }) =>
      `Hay perforaciones de la especialidad "${trade}" que son pasantes, y no se nombra a nadie que proteja la cara opuesta.`,
  },
  'outside-area': {
    title: 'Una perforación está fuera del área que nombra.',
    message: ({ area, distance }, say) =>
      `La perforación está ${say.length(distance)} fuera del área "${area}" en planta.`,
    causeMessage: ({ area }) => `Hay perforaciones que nombran el área "${area}" y están fuera de ella en planta.`,
  },
  'in-closed-area': {
    title: 'Una perforación está en un área cerrada.',
    message: ({ area, otherName }) =>
      `La perforación está en el área "${area}"${inInput(otherName)}, que está cerrada.`,
    causeMessage: ({ area, otherName }) =>
      `Hay perforaciones en el área "${area}"${inInput(otherName)}, que está cerrada.`,
  },
  'permit-missing': {
    title: 'Un área con una condición no cita ningún permiso ni clasificación que consultar.',
    message: ({ area, kinds }) =>
      `El área "${area}" (${words(kinds)}) tiene perforaciones por hacer y no cita ningún permiso ni clasificación.`,
    causeMessage: ({ kinds }) =>
      `Hay áreas (${words(kinds)}) con perforaciones por hacer que no citan ningún permiso ni clasificación.`,
  },
  'scan-missing': {
    title: 'Se va a perforar concreto del que el trazo no muestra ningún escaneo.',
    message: ({ substrate, holes }) =>
      `El trazo no muestra ningún escaneo del elemento de concreto "${substrate}", en el que ${holes === 1 ? 'se va a hacer una perforación' : `se van a hacer ${holes} perforaciones`}.`,
    causeMessage: () => 'Se va a perforar concreto del que el trazo no muestra ningún escaneo.',
  },
  'revision-unissued': {
    title: 'La revisión no dice cuándo ni por quién se emitió.',
    message: ({ label, missing }) => {
      const what = missing === 'issued' ? 'cuándo' : missing === 'by' ? 'por quién' : 'cuándo ni por quién';
      return `La revisión "${label}" no dice ${what} se emitió.`;
    },
  },
};
