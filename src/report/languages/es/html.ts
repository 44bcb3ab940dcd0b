import type { HtmlPhrases } from '../../html/html-phrases.js';
import { choice } from './choices.js';
import { counted } from './counted.js';
import { gridDimensionWords, planWords } from './plan-words.js';
import { phrases } from './phrases.js';
import { reason } from './reason.js';

const VERDICTS = {
  pass: 'estas comprobaciones no encontraron errores',
  fail: 'con errores',
  'cannot-judge': 'sin juzgar hasta el final',
} as const;

/** Fixed words of the report for people in Spanish. A check is `comprobación` here, since a page is full of revisions. */
export const html: HtmlPhrases = {
  plan: planWords,
  gridDimensions: gridDimensionWords,
  choice,
  reason,
  units: { 'ft-in': 'pies y pulgadas', ft: 'pies', in: 'pulgadas', mm: 'mm', m: 'm' },
  rulesElsewhere:
    'Por qué importa cada regla, cómo se corrige y cuándo la aceptan algunos proyectos lo explica `ahx explain` con el nombre de la regla, en inglés.',
  title: (name) => `${name}: informe de una comprobación`,
  page: ['Página', 'de'],
  first: {
    kind: 'Trazo de perforaciones para anclas: informe de una comprobación',
    projectNumber: 'Número de proyecto',
    phase: 'Fase',
    place: 'Lugar',
    purpose: 'Propósito de la comprobación',
    purposes: {
      'for-review': 'Para revisión',
      'for-drilling': 'Para perforar',
      'for-closeout': 'Para cierre de obra',
    },
    asOf: 'A la fecha',
    lengths: 'Longitudes',
    unitNotGiven: '(ningún trazo dice cómo las lee el proyecto)',
    checkedWith: 'Comprobado con',
    verdictHeading: 'Qué dice la comprobación',
    formOfFiles: (verdict) => `Forma de los archivos: ${VERDICTS[verdict]}.`,
    site: (verdict) => `Obra: ${VERDICTS[verdict]}.`,
    documentsHeading: 'Qué se comprobó',
    file: 'Archivo',
    documentKind: 'Clase',
    size: 'Tamaño',
    bytes: (count) => counted(count, 'byte'),
    fileDigest: 'Huella del archivo',
    holes: 'Perforaciones',
    judgedHoles: 'Perforaciones juzgadas',
  },
  unsaid: {
    heading: 'Qué no se dice',
    found: ({ error, warning, info, accepted }) =>
      `Hallazgos: ${counted(error, 'error', 'errores')}, ${counted(warning, 'aviso')}, ${info} info${accepted > 0 ? `; ${counted(accepted, 'aceptado')} más` : ''}. Lo que no es asunto de ninguna regla no se encuentra.`,
    unjudged: (notRun, inPart) => {
      const parts = [
        ...(notRun > 0 ? [`${counted(notRun, 'regla')} sin ejecutar`] : []),
        ...(inPart > 0
          ? [`${counted(inPart, 'regla')} que ${inPart === 1 ? 'juzgó' : 'juzgaron'} una parte de su asunto`]
          : []),
      ];
      return `${parts.join(', ')}: véase “Qué no se juzgó”.`;
    },
    noKeepOuts: 'En estos archivos no hay tendones, varillas ni instalaciones: no había nada que cruzar.',
    keepOuts: (count) =>
      `Los cruces se juzgaron con ${counted(count, 'zona de exclusión', 'zonas de exclusión')} de estos archivos; las varillas, los tendones y las instalaciones que no están entre ellas no se miraron.`,
    keepOutsUnjudged: (count) =>
      `${counted(count, 'zona de exclusión', 'zonas de exclusión')} en estos archivos; no se juzgó si las perforaciones ${count === 1 ? 'la' : 'las'} cruzan.`,
    scansOff: 'No se miró si el concreto se escaneó: la regla scan-missing está desactivada.',
    otherUnit: (file, unit, unitOfPage) =>
      `${file} lee las longitudes en ${unit}: los mensajes sobre él están en esa unidad, las tablas de esta página en ${unitOfPage}.`,
  },
  layout: {
    layout: 'Trazo',
    revision: 'Revisión',
    supersedes: 'Sustituye a',
    madeFrom: 'Hecho a partir de',
    revisionOf: (revision, layout) => `revisión ${revision} de ${layout}`,
    issued: 'Emitido',
    issuedBy: 'Emitido por',
    revisionNote: 'Nota de la revisión',
    submittal: 'Entrega',
    transmittal: 'Remisión',
    specSection: 'Sección de especificaciones',
    handedOverFor: 'Entregado para',
    preparedBy: 'Preparado por',
    checkedBy: 'Verificado por (según el trazo)',
  },
  sources: {
    heading: 'Documentos de origen y partes',
    documents: 'Documentos a partir de los cuales se hicieron los trazos',
    documentHeads: ['Título', 'Clase', 'Revisión', 'Fecha', 'De', 'Huella'],
    parties: 'Partes',
    partyHeads: ['Empresa', 'Persona', 'Función', 'Contacto'],
  },
  frame: {
    heading: 'Marco de referencia, niveles y control',
    levels: (unit) => `Niveles, alturas en ${unit} sobre el origen de las alturas`,
    levelHeads: [
      'Nivel',
      'Edificio',
      'Cota de referencia',
      'Piso terminado',
      'Nivel superior de la estructura',
      'Caras inferiores',
    ],
    control: (unit) => `Puntos de control, ${unit}, marco de la obra`,
    controlHeads: [
      'Punto',
      'x',
      'y',
      'Altura',
      'Clase',
      'Desviación estándar en planta',
      'Desviación estándar de la altura',
      'Origen',
      'Verificado',
      'Reemplazado por',
    ],
    heightNotGiven: 'no indicada',
    siteFrame: 'Marco de la obra',
    aboutAxes: (frame) => `${frame}: dextrógiro, z hacia arriba, x e y coordenadas en planta`,
    heightsFrom: 'Las alturas se cuentan desde',
    trueNorth: 'Norte verdadero',
    projectNorth: 'Norte de proyecto',
    turned: (degrees) => `${degrees}° desde el eje y en el sentido de las manecillas del reloj`,
    map: 'Mapa',
    georeference: (crs, eastings, northings) => `${crs}, origen en ${eastings} E, ${northings} N`,
    note: 'Nota',
  },
  holes: {
    heading: 'Perforaciones',
    byLevel: 'Perforaciones por nivel',
    levelHeads: ['Nivel', 'Perforaciones'],
    noLevel: 'Sin nivel indicado',
    byArea: 'Perforaciones por área',
    areaHeads: ['Área', 'Perforaciones'],
    noArea: 'Sin área indicada',
    byTrade: 'Perforaciones por especialidad y empresa',
    tradeHeads: ['Especialidad', 'Empresa', 'Perforaciones'],
    noTrade: 'Ninguna especialidad que se pueda leer',
    types: (unit) => `Tipos de perforación y sus valores mínimos, longitudes en ${unit}`,
    typeHeads: [
      'Tipo',
      'Perfora\u00adciones',
      'Ancla',
      'Diá\u00admetro',
      'Profun\u00addidad',
      'Empotra\u00admiento',
      'Separa\u00adción',
      'Borde',
      'Espesor',
      'Valores según',
      'Aproba\u00adción',
    ],
    groupSpacings: (unit) =>
      `Separación que se calculó para grupos y reemplaza la separación mínima de sus tipos, longitudes en ${unit}`,
    groupHeads: ['Clase de grupo', 'Grupos', 'Separación', 'Origen', 'Los grupos son'],
    moreSpacings: (count) => `Y ${counted(count, 'separación', 'separaciones')} de grupos más.`,
    edition: (name) => `edición ${name}`,
    validUntil: (date) => `vigente hasta ${date}`,
  },
  changes: {
    heading: 'Cambios',
    declaredOnly: 'Cambios que declara un trazo; no se tuvo la revisión anterior para compararlos',
    declaredUnread: 'Cambios que declara un trazo que no se pudo comparar con la revisión anterior',
    undeclared: (layout, before, count) =>
      `${layout}: ${counted(count, 'cambio')} desde la revisión ${before} ${count === 1 ? 'no está declarado' : 'no están declarados'}.`,
    otherParent: (layout, before) =>
      `${layout}: el trazo dice que se hizo a partir de otra revisión que ${before}, con la que aquí se compara.`,
    oneLabel: (layout, label) => `${layout}: ambas revisiones llevan la marca ${label}, y no son iguales.`,
    uncompared: (layout) =>
      `${layout} no se pudo leer hasta el final; por eso no se compara con la revisión anterior que se dio.`,
    declared: 'Cambios que declara el trazo',
    declaredHereHeads: ['Cambio declarado', 'Clase', 'Perforaciones', 'Motivo', 'RFI'],
    declaredHeads: ['Trazo', 'Clase', 'Perforaciones', 'Motivo', 'RFI'],
    revisions: (layout, before, after) => `${layout}: de la revisión ${before} a la ${after}`,
    numbers: (before, after, paired, unchanged) =>
      `${counted(before, 'perforación', 'perforaciones')} antes, ${after} ahora; ${paired} en ambas, ${unchanged} de ellas sin cambio.`,
    parent: {
      matches: 'El trazo nombra la revisión anterior como aquella de la que se hizo.',
      differs: 'El trazo dice que se hizo a partir de otra revisión que aquella con la que aquí se compara.',
      absent: 'El trazo no dice a partir de qué revisión se hizo.',
    },
    newIds: (trades) => `Las perforaciones de ${trades} tienen ids nuevos:`,
    knownAgain: (byPlace, byId) => `${byPlace} se reconocieron por su lugar, ${byId} por su id.`,
    moved: (unit) => `Movidas, ${unit}`,
    movedHeads: ['Perforación', 'De', 'A', 'Movimiento', 'Distancia', 'Declarado'],
    added: 'Agregadas',
    addedHeads: ['Perforación', 'En lugar de', 'Declarado'],
    removed: 'Retiradas',
    removedHeads: ['Perforación', 'Reemplazada por', 'Declarado'],
    respecified: (unit) => `Especificadas de otro modo, longitudes en ${unit}`,
    reassigned: 'Asignadas de otro modo',
    memberHeads: ['Perforación', 'Qué', 'Declarado'],
    renumbered: 'Etiquetadas de otro modo',
    renumberedHeads: ['Perforación', 'De', 'A', 'Declarado'],
    redefined: (unit) => `Definiciones nuevas, retiradas o distintas, longitudes en ${unit}`,
    redefinedHeads: ['Definición', 'Estado', 'Qué', 'Perforaciones', 'Declarado'],
    states: { added: 'nueva', removed: 'retirada', changed: 'distinta' },
    header: 'Del trazo mismo',
    headerHeads: ['Campo', 'Qué'],
    notFound: 'Declarados y no encontrados',
    notFoundHeads: ['Cambio declarado', 'Clase', 'Perforaciones'],
    change: (number) => `cambio ${number}`,
    isDeclared: { 'for-all': 'declarado', 'for-some': 'declarado para algunas', 'for-none': 'no declarado' },
    more: (count) => `Y ${count} más.`,
    moreIds: phrases.more,
    was: (name, before) => `${name}, antes ${before}`,
    asFound: 'como se encuentre',
    noValue: 'ninguno',
  },
  unjudged: {
    heading: 'Qué no se juzgó',
    off: (rules) => `Reglas desactivadas mientras no se pidan, o que se desactivaron: ${rules}.`,
    rules: 'Reglas que no se ejecutaron, o no sobre todo',
    ruleHeads: ['Regla', 'Sobre', 'Juzgado', 'Por qué'],
    notRun: 'sin ejecutar',
    judged: (judged, of) => `${judged} de ${of}`,
    settings: 'Qué ajustó el proyecto de otro modo que el usual',
    settingHeads: ['Regla', 'Ajuste'],
    severity: (severity) => `gravedad: ${GRAVITIES.get(severity) ?? severity}`,
  },
  causes: {
    heading: 'Hallazgos por causa',
    nothing: 'Las reglas que se ejecutaron no encontraron nada.',
    onlyAccepted: (count) =>
      `No se encontró nada que no esté aceptado; ${counted(count, 'hallazgo')} ${count === 1 ? 'está aceptado' : 'están aceptados'}, véase abajo.`,
    more: (count) => `Y ${counted(count, 'causa')} más; el informe en JSON las muestra todas.`,
    kept: (listed, total) =>
      `Se guardaron uno por uno ${listed} de ${counted(total, 'hallazgo')}; todos están contados.`,
    rule: (id) => `regla ${id}`,
    holes: 'Perforaciones:',
    why: 'Por qué importa:',
    mend: 'Cómo se corrige:',
    accept: 'Aceptado en algunos proyectos:',
  },
  accepted: {
    heading: 'Hallazgos aceptados por un tiempo',
    caption: 'Aceptar un hallazgo no es una aprobación.',
    heads: ['Regla', 'Qué', 'Perforaciones', 'Ahora', 'Motivo', 'RFI', 'Responsable', 'Desde', 'Hasta', 'Estado'],
    matched: (now, accepted) => `${now} de ${accepted}`,
    states: {
      'in-force': 'vigente',
      expired: 'vencida; vuelve a contar',
      stale: 'sin objeto: ya no existe',
      'not-checked': 'no comprobada aquí',
    },
  },
  trades: {
    heading: 'Entre especialidades',
    caption: (isPart) =>
      `Hallazgos que dos especialidades o archivos tienen que resolver${isPart ? '; de los que se guardaron uno por uno' : ''}`,
    kept: (listed, total) =>
      `Solo se guardaron uno por uno ${listed} de ${counted(total, 'hallazgo')}. Lo que hay entre especialidades está aquí en la medida en que esté entre ellos; puede haber más.`,
    heads: ['Entre', 'Y', 'Regla', 'Hallazgos', 'Por ejemplo'],
  },
  plans: {
    heading: 'Planos',
    numbers: 'Los números en los planos son los de las causas de arriba.',
    moreLevels: (count) => `Sin planos por pasar del máximo: ${counted(count, 'nivel', 'niveles')} más.`,
  },
  schedule: {
    heading: 'Lista de perforaciones',
    lengths: (unit, datum = 'el origen de las alturas') =>
      `Longitudes en ${unit}. Alturas sobre ${datum}; “como se encuentre”: en la superficie del concreto.`,
    heads: [
      'Etiqueta',
      'Id',
      'Especialidad',
      'Tipo',
      'Distancias a los ejes',
      'x',
      'y',
      'Altura',
      'Elemento de concreto',
    ],
    noLevel: 'sin nivel indicado',
    asFound: 'como se encuentre',
    more: (count) =>
      count === 1
        ? 'Aquí no se muestra 1 perforación más; el trazo la tiene.'
        : `Aquí no se muestran ${count} perforaciones más; el trazo las tiene todas.`,
  },
  review: {
    heading: 'Dictamen',
    byHand: 'Se llena a mano. Este informe dice qué se encontró, y nada sobre quién puede perforar.',
    outcomes: [
      'Sin excepciones',
      'Con las excepciones anotadas',
      'Corregir y volver a presentar',
      'Rechazado',
      'Solo para archivo',
    ],
    signatures: 'Nombres y firmas',
    heads: ['Función', 'Empresa', 'Nombre', 'Fecha', 'Firma'],
    roles: ['Preparado por', 'Contratista general', 'Ingeniero responsable', 'Otro'],
  },
};

const GRAVITIES: ReadonlyMap<string, string> = new Map([...Object.entries(phrases.severity), ['off', 'desactivada']]);
