import type { PlanWords } from '../../../draw/plan-words.js';
import type { GridDimensionWords } from '../../../frame/grid-dimension-text.js';
import { counted } from './counted.js';

const holes = (count: number) => counted(count, 'perforación', 'perforaciones');

/** Words of the plans in Spanish. Those of the legend are short: a column holds about 23 letters. */
export const planWords: PlanWords = {
  noLevel: 'Sin nivel indicado',
  seenFromAbove: 'Orientación de planta, como vista desde arriba',
  keyPlan: 'Ubicación',
  noOutline: 'sin contorno',
  scale: (name) => `Esc. ${name} a tamaño real`,
  holes,
  trueNorth: 'N: norte verdadero',
  projectNorth: 'NP: norte proyecto',
  noNorth: 'Norte no indicado',
  trueNorthLetter: 'N',
  projectNorthLetter: 'NP',
  edges: {
    free: 'Borde libre',
    opening: 'Borde de un hueco',
    continuous: 'El concreto continúa',
    'construction-joint': 'Junta de construcción',
    'movement-joint': 'Junta de movimiento',
  },
  opening: 'Hueco',
  zone: 'Otro espesor o altura',
  uprightFace: 'Cara vertical',
  keepOuts: {
    tendon: 'Exclusión: tendón',
    bar: 'Exclusión: varilla',
    conduit: 'Exclusión: conduit',
    embed: 'Exclusión: inserto',
    'live-service': 'Exclusión: en servicio',
    other: 'Exclusión: otra',
  },
  standoff: 'Resguardo y tolerancia',
  bores: {
    complete: 'Perforación existente',
    partial: 'Existente, parcial',
    abandoned: 'Existente, abandonada',
  },
  group: 'Grupo de perforaciones',
  cause: 'Causa en el informe',
  noSymbol: 'sin símbolo',
  unknownShape: (shape) => `"${shape}" como círculo`,
  moreTrades: (count) => `y ${counted(count, 'especialidad', 'especialidades')} más`,
  alike: 'Algunas especialidades se ven iguales: el trazo no les da símbolos que difieran en forma, letras o color.',
  alikeButForColour: 'Algunas especialidades difieren solo en color: el trazo no les da otra forma ni otras letras.',
  lettersLeftOut: 'Las especialidades de una misma forma difieren en letras que no caben a esta escala.',
  tagsLeftOut: (count, of) => `Sin etiqueta por falta de espacio: ${count} de ${holes(of)}.`,
  namesLeftOut: (count) =>
    `Sin mostrar por falta de espacio: ${counted(count, 'nombre')} de ejes y zonas de exclusión.`,
  causesLeftOut: (count) => `Sin señalar por falta de espacio: ${counted(count, 'causa')}.`,
  holesOutside: (count) => `Fuera de este plano: ${holes(count)}.`,
  holesUnread: (count) => `En ningún plano por no poder leerse: ${holes(count)} de los trazos.`,
  holesInOnePlace: (count) => `En el mismo lugar en planta que otra: ${holes(count)}.`,
  holesMerged: (count, paper) => `Sin dibujar por separado, a menos de ${paper} de otra en el papel: ${holes(count)}.`,
  keepOutsWithoutLevel: (count) =>
    `En ningún plano por falta de nivel: ${counted(count, 'zona de exclusión', 'zonas de exclusión')}.`,
  boresWithoutLevel: (count) =>
    `En ningún plano por falta de nivel: ${counted(count, 'perforación existente', 'perforaciones existentes')}.`,
  shapesLeftOut: (count) =>
    `Sin dibujar por pasar del máximo: ${counted(count, 'contorno o zona de exclusión', 'contornos y zonas de exclusión')}.`,
};

/** Compass points, of which west is `O` in Spanish; plan axes stay. */
const SIDES = {
  N: 'al N',
  NE: 'al NE',
  E: 'al E',
  SE: 'al SE',
  S: 'al S',
  SW: 'al SO',
  W: 'al O',
  NW: 'al NO',
  '+x': 'hacia +x',
  '−x': 'hacia −x',
  '+y': 'hacia +y',
  '−y': 'hacia −y',
} as const;

/** Dimensions from gridlines in Spanish: `3'-2" al E de C, 1'-0" al N de 4`. */
export const gridDimensionWords: GridDimensionWords = {
  from: (length, side, line) => `${length} ${SIDES[side]} de ${line}`,
  on: (line) => `sobre ${line}`,
  lengthened: 'eje prolongado',
  askew: (angleDeg) => `los ejes se cruzan a ${angleDeg}°`,
  oneFamily: 'solo ejes paralelos',
};
