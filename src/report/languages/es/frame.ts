import type { RuleWords } from '../../../model/language.js';
import { orNone } from './in-words.js';
import { prose } from './prose.js';
import { word, words } from './word.js';

/** Rules of the stage frame in Spanish. */
export const frame: Readonly<Record<string, RuleWords>> = {
  'frames-differ': {
    title:
      'Los trazos que se revisan juntos tienen distintos marcos de referencia; por eso no se comparan sus perforaciones.',
    message: ({ differs, own, other, otherName }) =>
      differs === 'georeference'
        ? `La georreferencia no es la de ${otherName}; por eso no se comparan las perforaciones de los dos.`
        : `Difiere ${word(differs)}: "${own}" aquí y "${other}" en ${otherName}; por eso no se comparan las perforaciones de los dos.`,
  },
  'layout-repeated': {
    title: 'Dos trazos que se revisan juntos tienen el mismo id.',
    message: ({ id, revision, otherRevision, otherName }) => {
      const differ = revision !== undefined && otherRevision !== undefined && revision !== otherRevision;
      const revisions = differ ? `, revisión "${revision}" aquí y "${otherRevision}" allá` : '';
      return `El trazo "${id}" ya está en ${otherName}${revisions}. No se comparan las perforaciones de los dos. Deje fuera el que ya no vale, o dé a uno un id propio.`;
    },
  },
  'definitions-differ': {
    title: 'Dos trazos describen de modo distinto una losa o un nivel.',
    message: ({ collection, id, members, otherName }) =>
      `${collection === 'levels' ? 'El nivel' : 'El elemento de concreto'} "${id}" se describe de modo distinto en ${otherName} (${members}). Sus perforaciones se juzgan con la descripción de aquí.`,
    causeMessage: ({ collection, members, otherName }) =>
      `${collection === 'levels' ? 'Hay niveles' : 'Hay elementos de concreto'} que se describen de modo distinto en ${otherName} (${members}). Sus perforaciones se juzgan con las descripciones de aquí.`,
  },
  'units-suspect': {
    title: 'Los números parecen de otra unidad que no es el milímetro.',
    message: ({ what, reading, sizes, asRead, asWritten, of }) =>
      what === 'sizes'
        ? `${asRead} de ${of} medidas (${words(sizes)}) tienen sentido si se leen como ${word(reading)}, ${orNone(asWritten)} como milímetros.`
        : `${asRead} de ${of} perforaciones caen en sus elementos de concreto si las coordenadas de ${word(what)} se leen como ${word(reading)}, ${orNone(asWritten)} como milímetros.`,
  },
  'feet-mixed': {
    title: 'Unas coordenadas vienen de pies internacionales y otras de pies topográficos de EE. UU.',
    message: ({ international, internationalFit, internationalStep, survey, surveyFit, surveyStep, difference }, say) =>
      `Para ${word(international)} parecen usarse pies internacionales (${prose(internationalFit) ?? internationalFit} coordenadas son múltiplos de ${internationalStep}); para ${word(survey)}, pies topográficos de EE. UU. (${prose(surveyFit) ?? surveyFit} son múltiplos de ${surveyStep}). En la más lejana los dos se separan ${say.length(difference)}.`,
  },
  'axes-swapped': {
    title: 'Parece que en las perforaciones x e y están intercambiados.',
    message: ({ asRead, asWritten, of }) =>
      `${asRead} de ${of} perforaciones caen en sus elementos de concreto si se intercambian x e y, ${orNone(asWritten)} como están escritas.`,
  },
  'plan-mirrored': {
    title: 'La planta de las perforaciones parece estar en espejo.',
    message: ({ evidence, axis, about, asRead, asWritten, of }) =>
      evidence === 'groups'
        ? `${asRead} de ${of} grupos coinciden con su patrón solo si se pone en espejo, ${asWritten || 'ninguno'} como se declara.`
        : `${asRead} de ${of} perforaciones caen en sus elementos de concreto si ${axis} se invierte respecto ${about === 'origin' ? 'al origen' : 'al centro de los contornos'}, ${orNone(asWritten)} como están escritas.`,
  },
  'off-surface': {
    title: 'La altura de una perforación no es la de la cara que se perfora.',
    message: ({ substrate, offset, looksLike }, say) =>
      `La perforación está ${off(Number(offset), say.length(Math.abs(Number(offset))))} la cara del elemento de concreto "${substrate}"${looks(looksLike)}.`,
    causeMessage: ({ substrate, level, offset, looksLike, shared, ofLevel, least, most }, say) => {
      if (shared === undefined)
        return `Hay perforaciones fuera de la cara del elemento de concreto "${substrate}", con distintas alturas.`;
      const holes = shared === ofLevel ? `Las ${shared} perforaciones` : `${shared} de las ${ofLevel} perforaciones`;
      const of = level === undefined ? 'sin nivel' : `del nivel "${level}"`;
      const [near, far] = [least ?? offset, most ?? offset].map((mm) => say.length(Math.abs(Number(mm))));
      const span = Number(offset) > 0 ? `${near} a ${far}` : `${far} a ${near}`;
      const by = off(Number(offset), least === undefined ? far : span);
      return `${holes} ${of} están ${by} las caras de sus elementos de concreto${looks(looksLike)}.`;
    },
  },
  'height-stand-in': {
    title: 'Perforaciones que se hacen hacia arriba tienen la altura de un piso.',
    message: ({ level, standIn, height }, say) =>
      `La perforación se hace hacia arriba y su altura ${say.length(height)} es ${standInOf(standIn, level)}.`,
    causeMessage: ({ level, standIn, height, holes }, say) =>
      `${holes} perforaciones se hacen hacia arriba y su altura ${say.length(height)} es ${standInOf(standIn, level)}.`,
  },
  'level-mismatch': {
    title: 'Una perforación no está en el nivel que nombra.',
    message: ({ level, other, substrate, height, low, high }, say) => {
      if (substrate !== undefined)
        return `La perforación nombra el nivel "${level}", pero su elemento de concreto "${substrate}" nombra el nivel "${other}".`;
      const range =
        high === undefined ? `empieza en ${say.length(low)}` : `va de ${say.length(low)} a ${say.length(high)}`;
      return `La perforación está a ${say.length(height)}, y su nivel "${level}" ${range}${like(other, level)}.`;
    },
    causeMessage: ({ level, other, substrate }) =>
      substrate === undefined
        ? `Hay perforaciones por encima o por debajo de su nivel "${level}"${like(other, level)}.`
        : `Hay perforaciones que nombran el nivel "${level}", pero sus elementos de concreto nombran el nivel "${other}".`,
  },
  'far-from-others': {
    title: 'Unas pocas perforaciones están lejos de todas las demás de su nivel.',
    message: ({ level, distance, length, others }, say) =>
      `La perforación está a ${say.length(distance)} de las otras ${others} perforaciones del nivel "${level}", que caben en ${say.length(length)}.`,
    causeMessage: ({ level, length, others }, say) =>
      `Unas pocas perforaciones están lejos de las otras ${others} del nivel "${level}", que caben en ${say.length(length)}.`,
  },
  'map-scale-suspect': {
    title: 'La escala de la georreferencia no es la de los milímetros.',
    message: ({ scale, looksLike, expected, unit, ratio }) => {
      if (looksLike === 'inverted')
        return `La escala ${scale} parece invertida: un milímetro es ${short(expected)} si el sistema de referencia está en ${word(unit)}.`;
      if (looksLike === 'factor')
        return `La escala ${scale} es ${short(ratio)} veces la de ${word(unit)}, ${short(expected)}; puede incluir el factor combinado del levantamiento.`;
      if (looksLike === 'no scale')
        return `La escala es 1; un milímetro es ${short(expected)} si el sistema de referencia está en ${word(unit)}.`;
      return `La escala ${scale} no es ni la de un sistema de referencia en metros, 0.001, ni la de uno en pies.`;
    },
  },
};

function off(offset: number, distance: string): string {
  return offset > 0 ? `${distance} por dentro de` : `${distance} por delante de`;
}

function looks(looksLike: unknown): string {
  return looksLike === undefined ? '' : `; la altura coincide con ${word(looksLike)}`;
}

function standInOf(standIn: unknown, level: unknown): string {
  if (standIn === 'zero') return `cero, donde el nivel "${level}" no tiene ni piso ni cara inferior`;
  return standIn === 'the datum of the level'
    ? `la cota de referencia del nivel "${level}"`
    : `${word(standIn)} del nivel "${level}"`;
}

function like(other: unknown, level: unknown): string {
  return other === undefined || other === level ? '' : `; la altura parece del nivel "${other}"`;
}

function short(value: unknown): number {
  return Number(Number(value).toPrecision(10));
}
