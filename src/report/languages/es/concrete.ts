import type { RuleWords } from '../../../model/language.js';
import { angle, fluteGuess, keepOut, side } from './in-words.js';
import { word } from './word.js';

/** Rules of the stage geometry about holes in the concrete and what lies in it in Spanish. */
export const concrete: Readonly<Record<string, RuleWords>> = {
  'outside-substrate': {
    title: 'Una perforación está fuera del concreto que nombra.',
    message: ({ substrate, where, distance }, say) =>
      where === 'opening'
        ? `La perforación está en un hueco del elemento de concreto "${substrate}", a ${say.length(distance)} de su borde.`
        : `La perforación está ${say.length(distance)} fuera del elemento de concreto "${substrate}".`,
    causeMessage: ({ substrate, where }) =>
      where === 'opening'
        ? `Hay perforaciones en un hueco del elemento de concreto "${substrate}".`
        : `Hay perforaciones fuera del elemento de concreto "${substrate}".`,
  },
  'breaks-through': {
    title: 'Una perforación ciega sale por la cara opuesta del concreto, o queda demasiado cerca de ella.',
    message: ({ substrate, reach, thickness, at, backing, side: ofThickness, phaseFrom }, say) => {
      const needs =
        Number(backing) > 0
          ? `${say.length(reach)} con los ${say.length(backing)} que deben quedar`
          : say.length(reach);
      const where = at === 'end' ? `donde termina la perforación${ofThickness === undefined ? '' : ','}` : 'ahí';
      return `La perforación necesita ${needs}; el elemento de concreto "${substrate}" tiene ${say.length(thickness)} de espesor ${where}${side(ofThickness, phaseFrom)}.`;
    },
    causeMessage: ({ substrate, thickness, side: ofThickness, phaseFrom }, say) =>
      `Hay perforaciones que necesitan más concreto que los ${say.length(thickness)} del elemento de concreto "${substrate}"${side(ofThickness, phaseFrom)}.`,
  },
  'stops-short': {
    title: 'Una perforación pasante tiene una profundidad con la que no sale por la cara opuesta.',
    message: ({ substrate, reach, thickness, side: ofThickness, phaseFrom }, say) =>
      `La perforación pasante se da con ${say.length(reach)} de profundidad; el elemento de concreto "${substrate}" tiene ${say.length(thickness)} de espesor ahí${side(ofThickness, phaseFrom)}.`,
    causeMessage: ({ substrate, thickness, side: ofThickness, phaseFrom }, say) =>
      `Hay perforaciones pasantes con menos profundidad que los ${say.length(thickness)} del elemento de concreto "${substrate}"${side(ofThickness, phaseFrom)}.`,
  },
  'member-too-thin': {
    title: 'El concreto es más delgado de lo que necesita el tipo de la perforación.',
    message: ({ holeType, substrate, thickness, limit, source, side: ofThickness, phaseFrom }, say) =>
      `El tipo "${holeType}" necesita concreto de al menos ${say.length(limit)} de espesor (${source}); el elemento de concreto "${substrate}" tiene ahí ${say.length(thickness)} de espesor${side(ofThickness, phaseFrom)}.`,
    causeMessage: ({ holeType, substrate, thickness, limit, source, side: ofThickness, phaseFrom }, say) =>
      `Hay perforaciones del tipo "${holeType}" que necesitan concreto de al menos ${say.length(limit)} de espesor (${source}); el elemento de concreto "${substrate}" tiene ${say.length(thickness)} de espesor${side(ofThickness, phaseFrom)}.`,
  },
  'axis-out-of-concrete': {
    title: 'El eje de una perforación no entra en el concreto.',
    message: ({ substrate, slantDeg }) =>
      `El eje no entra en el elemento de concreto "${substrate}": se aparta ${angle(slantDeg)} de la dirección hacia el concreto.`,
    causeMessage: ({ substrate }) =>
      `Hay ejes de perforaciones que no entran en el elemento de concreto "${substrate}".`,
  },
  'not-square': {
    title: 'El eje de una perforación no es del todo perpendicular a la cara.',
    message: ({ substrate, slantDeg, limitDeg }) =>
      `El eje se inclina ${angle(slantDeg)} respecto de la perpendicular a la cara del elemento de concreto "${substrate}"; hasta ${angle(limitDeg)} cuenta como perpendicular.`,
    causeMessage: ({ substrate, slantDeg }) =>
      `Hay ejes de perforaciones que se inclinan ${angle(slantDeg)} respecto de la perpendicular a la cara del elemento de concreto "${substrate}".`,
  },
  'direction-not-for-type': {
    title: 'Una perforación se hace en una dirección para la que no es su tipo.',
    message: ({ holeType, direction, directions }) =>
      `La perforación se hace ${word(direction)}; el tipo "${holeType}" es para perforaciones hechas ${(directions as string[]).map(word).join(' o ')}.`,
    causeMessage: ({ holeType, direction, directions }) =>
      `Hay perforaciones que se hacen ${word(direction)}; el tipo "${holeType}" es para perforaciones hechas ${(directions as string[]).map(word).join(' o ')}.`,
  },
  'embedment-exceeds-depth': {
    title: 'El empotramiento del ancla es mayor que la profundidad de la perforación.',
    message: ({ holeType, embedment, depth }, say) =>
      `El ancla del tipo "${holeType}" entra ${say.length(embedment)} en una perforación de ${say.length(depth)} de profundidad.`,
  },
  'flute-web-hit': {
    title: 'Una broca toca el alma inclinada de una lámina acanalada.',
    message: ({ fromMiddle, lowWidth, highWidth, diameter, phaseFrom }, say) =>
      `La broca de ${say.length(diameter)} toca el alma de la lámina: la perforación está a ${say.length(fromMiddle)} del centro de un valle de ${say.length(lowWidth)} de ancho abajo y ${say.length(highWidth)} arriba${fluteGuess(phaseFrom)}.`,
    causeMessage: ({ substrate, phaseFrom }) =>
      `Hay brocas que tocan las almas de la lámina del elemento de concreto "${substrate}"${fluteGuess(phaseFrom)}.`,
  },
  'flute-offset': {
    title: 'Una perforación está en el canal equivocado de una lámina acanalada, o demasiado lejos de su centro.',
    message: ({ holeType, flute, in: allowed, offset, maxOffset, source, phaseFrom }, say) =>
      isWrong(flute, allowed)
        ? `La perforación está sobre ${flute === 'low' ? 'un valle' : 'una cresta'} de la lámina; el tipo "${holeType}" es para ${flutes(allowed)} (${source})${fluteGuess(phaseFrom)}.`
        : `La perforación está a ${say.length(offset)} del centro de su ${flute === 'low' ? 'valle' : 'cresta'}; se permiten como máximo ${say.length(maxOffset)} (${source})${fluteGuess(phaseFrom)}.`,
    causeMessage: ({ holeType, substrate, flute, in: allowed, maxOffset, source, phaseFrom }, say) =>
      isWrong(flute, allowed)
        ? `Hay perforaciones sobre ${flutes(flute)} del elemento de concreto "${substrate}"; el tipo "${holeType}" es para ${flutes(allowed)} (${source})${fluteGuess(phaseFrom)}.`
        : `Hay perforaciones a más de ${say.length(maxOffset)} del centro de sus valles o crestas del elemento de concreto "${substrate}" (${source})${fluteGuess(phaseFrom)}.`,
  },
  'crosses-keep-out': {
    title: 'Una perforación pasa demasiado cerca de algo que no se debe tocar.',
    message: ({ clear, standoff, positionTolerance, ...data }, say) => {
      if (Number(clear) <= SLACK_MM) return `La perforación entra en ${keepOut(data)}.`;
      const passes = `La perforación pasa a ${say.length(clear)} de ${keepOut(data)}`;
      return isShort(clear, standoff)
        ? `${passes}; se deben guardar al menos ${say.length(standoff)}.`
        : `${passes}. Puede que no se guarden los ${say.length(standoff)}, pues su posición puede variar ${say.length(positionTolerance)}.`;
    },
    causeMessage: (data) => {
      if (data.kind === 'bar' && data.knownFrom === 'design-drawing')
        return 'Hay perforaciones que tocan varillas de refuerzo conocidas por un plano de diseño; localícelas antes de perforar.';
      return isShort(data.clear, data.standoff)
        ? `Hay perforaciones que pasan demasiado cerca de ${keepOut(data)}.`
        : `Puede haber perforaciones demasiado cerca de ${keepOut(data)}, por su tolerancia de posición.`;
    },
  },
};

/** Slack of comparisons of lengths: the rule judges with the same one. */
const SLACK_MM = 0.0005;

function isShort(clear: unknown, standoff: unknown): boolean {
  return Number(clear) < Number(standoff) - SLACK_MM;
}

function isWrong(flute: unknown, allowed: unknown): boolean {
  return allowed !== 'either' && flute !== allowed;
}

function flutes(flute: unknown): string {
  return flute === 'low' ? 'valles' : flute === 'high' ? 'crestas' : String(flute);
}
