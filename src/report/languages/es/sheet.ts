import type { SheetWords } from '../../sheet/sheet-words.js';
import { counted } from './counted.js';
import { phrases } from './phrases.js';
import { gridDimensionWords, planWords } from './plan-words.js';

const holes = (count: number) => counted(count, 'perforación', 'perforaciones');
const SEVERITIES = { error: 'Error', warning: 'Aviso', info: 'Info' } as const;

/** The words of a crew sheet in Spanish, in the words of the reports. */
export const sheetWords: SheetWords = {
  language: 'es',
  plan: planWords,
  // A row has less room than a schedule.
  grid: { ...gridDimensionWords, from: (length, side, line) => `${length} ${side.replace('W', 'O')} de ${line}` },
  phrases,
  kinds: { package: 'Paquete', area: 'Área', level: 'Nivel' },
  revision: 'Revisión',
  supersedes: (label) => (label === undefined ? 'sustituye a: no se dice' : `sustituye a ${label}`),
  sheetOf: (number, count) => `Hoja ${number} de ${count}`,
  date: (day) => `para el ${day}`,
  noDate: 'sin fecha',
  issued: (day) => `emitido el ${day}`,
  crew: (name) => `cuadrilla: ${name}`,
  lengths: (unit) => `Longitudes en ${unit}, redondeadas como se ve.`,
  units: { 'ft-in': 'pies y pulgadas', ft: 'pies', in: 'pulgadas', mm: 'mm', m: 'm' },
  labels: {
    move: 'Mover',
    holds: 'Retenidas',
    conditions: 'Condición',
    checkLimit: 'Límite',
    substrates: 'Concreto',
    symbols: 'Símbolos',
    noDrill: 'Zonas sin perforar',
    call: 'Llamar a',
    control: 'Control',
    order: 'Orden',
    caution: 'Precaución',
    leftOut: 'Sin mostrar',
    findings: 'Hallazgos',
    changes: 'Cambios',
    height: 'Altura',
    bores: 'Existentes',
    reading: 'Lectura',
  },
  withUnit: (head, unit) => (unit === undefined ? head : `${head} (${unit})`),
  heads: {
    number: 'N.º',
    tag: 'Etiqueta',
    symbol: 'Sig.',
    bit: 'Broca',
    depth: 'Prof. tope',
    grid: 'Desde los ejes',
    substrate: 'Cl.',
  },
  boxes: [
    ['hecha', 'inicial.'],
    ['prof.', 'obst.'],
    ['largo', 'través'],
  ],
  seenFromAbove: 'Como vista desde arriba, no en espejo, también las perforaciones en el techo.',
  planScale: (name) => `Escala ${name}`,
  keyPlan: 'Ubicación',
  noOutline: 'sin contorno',
  drilled: {
    up: 'Se perfora hacia arriba.',
    down: 'Se perfora hacia abajo.',
    level: 'Se perfora de lado.',
    slanting: 'Se perfora inclinado.',
    unknown: 'Sentido de perforación no indicado: preguntar.',
  },
  noHolds: 'ninguna según el trazo; pedir la bitácora.',
  areaKinds: {
    pour: 'colado',
    priority: 'prioridad',
    access: 'acceso limitado',
    closed: 'cerrada',
    rated: 'resistente al fuego',
    clean: 'limpia',
    'noise-hours': 'horario de ruido',
    phase: 'fase',
  },
  allowance: ({ along, across, run, isTogether, ask }) => {
    const way = `${along} a lo largo (${run ?? 'dirección no indicada'}), ${across} a través${isTogether ? ', todo el grupo junto' : ''}`;
    return ask === 'tell-after'
      ? `se puede mover ${way}, y avisar después; si no, preguntar.`
      : `preguntar antes de mover; a lo más ${way}.`;
  },
  noAllowance: 'sin margen indicado: preguntar antes de mover.',
  noShift: 'no mover: preguntar.',
  noRun: 'no se indica la dirección del recorrido, preguntar antes de mover.',
  anyDirection: 'cualquier dirección',
  upright: 'vertical',
  fromX: (angleDeg) => `${angleDeg}° de x hacia y`,
  checkLimit: (tolerance) => `la mitad de ${tolerance}, la tolerancia de posición más estrecha aquí.`,
  noCheckLimit: ['ninguno', 'aquí no se indica tolerancia de posición, o una no deja nada hacia un lado: preguntar.'],
  checkRule:
    'Medir un punto de control que no se usó para la estación. Si difiere más: no marcar, preguntar. Si difiere menos: eso no dice nada de ninguna perforación.',
  controlHead: (frame, unit) => `Control (x, y, altura${unit === undefined ? '' : `; ${unit}`}), ${frame}`,
  noControl: 'No se indican puntos de control: preguntar.',
  noHeight: 'sin altura',
  checkPoint: 'verificación',
  moreControl: (count) => `${counted(count, 'punto')} más en el trazo`,
  core: 'corona',
  through: 'pasante',
  noDepth: 'preguntar',
  noDepthTolerance: 'límites: preguntar',
  noGrid: 'sin ejes',
  noSubstrate: 'no indicado: preguntar',
  substrates: {
    'solid-slab': 'losa maciza',
    'composite-deck': 'losa con lámina acanalada',
    'hollow-plank': 'losa alveolar',
    beam: 'viga',
    wall: 'muro',
    other: 'otro',
  },
  flutes: { low: 'solo valles', high: 'solo crestas', either: 'valles o crestas' },
  finishes: {
    fireproofing: 'protección contra fuego',
    plaster: 'aplanado',
    insulation: 'aislamiento',
    board: 'panel',
    coating: 'recubrimiento',
    other: 'otra capa',
  },
  finish: (kind, thickness) => `${kind} de ${thickness} sobre la cara, no cuenta en la profundidad`,
  throughNote: (level, protectedBy, protection) =>
    `Es pasante. Arriba: ${level ?? 'nivel no indicado'}. El otro lado lo protege: ${
      protectedBy ?? 'nadie indicado, preguntar antes de perforar'
    }${protection === undefined ? '' : ` (${protection})`}.`,
  firestop: (reference) => `Sello contra fuego ${reference}.`,
  slantNote: (angleDeg) => `El eje se desvía ${angleDeg}° de la perpendicular a la cara: preguntar cómo colocarlo.`,
  noDrillHead: (distance) =>
    `Zonas sin perforar conocidas a menos de ${distance} de estas perforaciones; puede haber otras:`,
  noDrillNone: (distance) =>
    `Zonas sin perforar: ninguna en la lista a menos de ${distance}. Eso no dice nada de lo que hay en el concreto.`,
  keepOuts: {
    tendon: 'tendón',
    bar: 'varilla',
    conduit: 'tubo conduit',
    embed: 'inserto',
    'live-service': 'instalación en servicio',
    other: 'otra',
  },
  knownFrom: {
    'design-drawing': 'plano de diseño',
    'shop-drawing': 'plano de taller',
    scan: 'escaneo',
    survey: 'levantamiento',
  },
  keepOut: ({ name, kind, standoff, off, from, number, distance }) =>
    `${name} (${kind}): resguardo ${standoff}${off === undefined ? '' : `, puede estar corrida ${off}`}; de ${from}; la más cercana N.º ${number}, ${distance}.`,
  moreKeepOuts: (count) =>
    `${counted(count, 'zona')} más cerca de estas perforaciones, fuera de la lista: ver la planta y preguntar.`,
  roles: {
    coordinator: 'coordinación',
    'engineer-of-record': 'ingeniería responsable',
    'general-contractor': 'contratista general',
    'trade-contractor': 'contratista de la especialidad',
    foreman: 'cabo',
    surveyor: 'topografía',
    scanner: 'escaneo',
    driller: 'perforación',
    quality: 'calidad',
    inspector: 'inspección',
    owner: 'propietario',
    other: 'otra función',
  },
  call: (party, role, contact) => `${party} (${role}): ${contact}.`,
  noContact: (parties) => `Sin contacto indicado: ${parties}.`,
  noParties: 'el trazo no nombra a nadie: preguntar al cabo.',
  moreParties: (count) => `${counted(count, 'parte')} más en el trazo.`,
  orderGiven: 'como las nombra el paquete.',
  orderGivenFirst: 'como los enumera el paquete, después los de sus zonas, fila por fila.',
  orderByRows: (from, to) => `fila por fila de ${from} a ${to}, de ida y vuelta; los grupos juntos.`,
  castIn: (count) => `${holes(count)} en el colado o existentes: nada que perforar ahí.`,
  broken: (count) => `${holes(count)} del paquete que el trazo no tiene.`,
  cut: 'Los textos que terminan en … están cortados; el trazo y el informe los tienen enteros.',
  labelsLeftOut: (count) => `${counted(count, 'rótulo')} de la planta por falta de espacio.`,
  shapesLeftOut: (count) =>
    `${counted(count, 'contorno, zona o perforación', 'contornos, zonas o perforaciones')} de la planta por pasar del máximo que se dibuja.`,
  noSymbol: (trade) => `círculo: ${trade}, sin símbolo indicado`,
  symbol: (trade, mark) => `${mark}: ${trade}`,
  validity: (from, to) =>
    [from === undefined ? '' : `desde ${from}`, to === undefined ? '' : `hasta ${to}`].filter(Boolean).join(' '),
  listHead: 'Las listas como texto',
  caution: phrases.caution,
  compass: ['N–S', 'NE–SO', 'E–O', 'NO–SE'],
  notChecked: 'esta hoja se hizo sin comprobación: no está marcado lo que una comprobación hallaría.',
  doNotDrill: 'No perforar antes de que la oficina haya resuelto esto.',
  finding: (severity, message) => `${SEVERITIES[severity]}: ${message}`,
  findingAtOther: (hole, message) => `con la perforación ${hole}, de la que la comprobación dice: ${message}`,
  acceptedFinding: (owner, until, message) => `Aceptado por ${owner} hasta ${until}: ${message}`,
  moreGeneral: (count) => `${counted(count, 'causa')} más sin perforación: ver el informe de la comprobación.`,
  notKept: (count) =>
    `${counted(count, 'hallazgo')} de la comprobación sin mirar aquí, son demasiados: puede faltar la marca de alguna perforación.`,
  holesWithFindings: (some, of) =>
    some === 0
      ? `Ninguno en ${of === 1 ? 'la perforación' : `las ${of} perforaciones`} de esta hoja.`
      : `${some} de ${holes(of)} de esta hoja ${some === 1 ? 'tiene' : 'tienen'} hallazgos.`,
  holesWithErrors: (numbers) => `Errores, casillas cerradas: N.º ${numbers}.`,
  holesWithWarnings: (numbers) => `Avisos: N.º ${numbers}.`,
  holesAccepted: (numbers) => `Aceptados por un tiempo: N.º ${numbers}.`,
  findingsNotShown: (count) => `${counted(count, 'hallazgo')} de estas perforaciones sin mostrar aquí.`,
  checkedAlone: 'Comprobado solo: no se miraron los trazos de otras especialidades.',
  checkedWith: (names) => `Comprobado junto con ${names}.`,
  notLookedAt: (names) => `Sin mirar, porque no se pueden comparar con este trazo: ${names}.`,
  otherHoles: (count, trades) => `Anillos cortados: ${holes(count)} de otras especialidades (${trades}).`,
  bore: ({ id, end, diameter, depth, number, distance }) =>
    `${id} (${[end, ...(diameter === undefined ? [] : [`diám. ${diameter}`]), ...(depth === undefined ? [] : [`prof. ${depth}`])].join(', ')}): la más cercana N.º ${number}, ${distance} entre centros.`,
  boreEnds: { complete: 'completa', partial: 'parcial', abandoned: 'abandonada' },
  moreBores: (count) =>
    `${counted(count, 'perforación existente', 'perforaciones existentes')} más cerca, fuera de la lista.`,
  heightAbove: {
    finishedFloor: (level) => `sobre el piso terminado de ${level}`,
    structuralTop: (level) => `sobre la losa estructural de ${level}`,
    datum: (datum) => `sobre el origen de las alturas (${datum})`,
  },
  heightOfAll: (height, above) => `Cara en todas las perforaciones: ${height} ${above}.`,
  heightOf: (height, numbers) => `Cara ${height} (N.º ${numbers})`,
  heightRange: (least, most, above) => `Cara: ${least} a ${most} ${above}; cada una en el trazo.`,
  heightAsFound: (numbers) =>
    `Cara como se encuentre${numbers === '' ? '' : ` en N.º ${numbers}`}: no se indica altura.`,
  signs: '!! error, ! aviso, (!) aceptado, Δ cambiada.',
  reading:
    'Límites de profundidad: + más honda, − menos honda, 0 no en ese sentido. Largo, través: cuánto se corrió, a lo largo y a través de la dirección. Obst.: qué estorbó.',
  members: {
    point: 'lugar',
    holeType: 'tipo de perforación',
    diameter: 'diámetro',
    depth: 'profundidad',
    depthTolerance: 'límites de profundidad',
    positionTolerance: 'tolerancia de posición',
    axis: 'eje',
    substrate: 'concreto',
    moveAllowance: 'lo que se puede mover',
    above: 'otro lado',
    bit: 'broca',
    thickness: 'espesor',
    face: 'cara',
    outline: 'contorno',
    name: 'nombre',
  },
  changed: (revision, what) => `Δ Desde la revisión ${revision}: ${what}.`,
  changeNew: 'nueva',
  changeMoved: (distance) => `movida ${distance}, tachar la marca anterior`,
  changeRespecified: (members) => `otros valores: ${members}`,
  changeTag: (from) => (from === undefined ? 'antes sin etiqueta' : `la etiqueta era ${from}`),
  changeRedefined: (name, members) => `${name} tiene otros valores: ${members}`,
  changesOfSheet: (revision, numbers) =>
    numbers === ''
      ? `Ninguno en estas perforaciones desde la revisión ${revision}.`
      : `Δ Nuevas, movidas o cambiadas desde la revisión ${revision}: N.º ${numbers}.`,
  takenOut: (revision, tags, more) =>
    `Quitadas desde la revisión ${revision}: ${tags}${more > 0 ? ` y ${more} más` : ''}: tachar las marcas anteriores.`,
};
