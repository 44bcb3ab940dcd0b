import type { Place } from '../../../generated/report.js';
import type { Phrases, SiteNumbers } from '../../../model/language.js';
import type { Purpose } from '../../../model/rule.js';
import { counted } from './counted.js';
import { forms } from './forms.js';
import { reason } from './reason.js';

const PURPOSES: Readonly<Record<Purpose, string>> = {
  'for-review': 'revisar',
  'for-drilling': 'perforar',
  'for-closeout': 'cerrar la obra',
};

const SEVERITIES = { error: 'error', warning: 'aviso', info: 'info' } as const;

/** The fixed sentences of a report in Spanish. */
export const phrases: Phrases = {
  severity: SEVERITIES,
  accepted: 'aceptado',
  acceptedUntil: (severity, expires, owner, why) =>
    `${SEVERITIES[severity]}, aceptado hasta ${expires} por ${owner}: ${why}`,
  place: placeInWords,
  tagged: (id, tag) => `${id} (etiqueta ${tag})`,
  hole: (name) => `perforación ${name}`,
  holes: (names) => `perforaciones ${names}`,
  findings: (count) => counted(count, 'hallazgo'),
  findingsFrom: (count, where) => `${counted(count, 'hallazgo')}, el primero en ${where}`,
  more: (count) => `y ${count} más`,
  moreCauses: (causes, findings) =>
    `y ${counted(causes, 'causa')} más con ${counted(findings, 'hallazgo')}; --format json las muestra todas`,
  listed: (listed, total) =>
    `Se muestran ${listed} de ${counted(total, 'hallazgo')}; las cifras de abajo los cuentan todos.`,
  settings: (list) => `ajustado para esta comprobación: ${list}`,
  ranOut: (rule, layout, owner, expires, findings) =>
    `vencida el ${expires}: la aceptación de ${rule} en "${layout}" por ${owner}; ${findings === 1 ? 'vuelve' : 'vuelven'} a contar ${counted(findings, 'hallazgo')}`,
  moreRanOut: (count) =>
    `y ${count} ${count === 1 ? 'aceptación vencida' : 'aceptaciones vencidas'} más; --format json las muestra`,
  stale: (gone, entries, thinner) =>
    `sin objeto: ${gone} de ${counted(entries, 'entrada')} de la línea base ya no tienen hallazgos, ${thinner} solo algunos; se puede depurar`,
  notJudged: (why, rules, moreRules) =>
    `sin juzgar: ${reason(why)} (${rules.join(', ')}${moreRules > 0 ? ` y ${counted(moreRules, 'regla')} más; --format json las muestra` : ''})`,
  moreReasons: (count) => `y ${counted(count, 'motivo')} más; --format json los muestra`,
  valid: (ahx, isTable) => (isTable ? `Se puede leer con su perfil como AHX ${ahx}.` : `AHX ${ahx} válido.`),
  formUnjudged: (ahx) => `No se puede juzgar si es AHX ${ahx} válido.`,
  notValid: (ahx, isTable, errors) =>
    `${isTable ? `No se puede leer con su perfil como AHX ${ahx}` : `No es AHX ${ahx} válido`}: ${counted(errors, 'error', 'errores')}.`,
  site: siteInWords,
  restOfCauses: '(Hay más causas de esta regla de las que se distinguen.)',
  caution:
    'Solo datos de trazo. No es un diseño ni un permiso para perforar. Confirme el tipo de ancla, el empotramiento, la distancia al borde y la separación con el proyectista responsable y con la aprobación del producto. Confirme en cada perforación el escaneo (varilla de refuerzo, tendones, instalaciones en servicio). Siga la ley local, las reglas de la obra y las instrucciones del operador de la máquina. Ante cualquier obstáculo, deténgase y presente una solicitud de información (RFI).',
  shortCaution:
    'Solo datos de trazo. No es un diseño ni un permiso para perforar. Siga las aprobaciones de los productos, la ley local y las reglas de la obra; el escaneo y el permiso siguen siendo necesarios.',
  forms,
};

function placeInWords({ line, column, row, sheet, byte, pointer }: Place): string {
  if (line !== undefined) return `línea ${line}, columna ${column ?? 1}`;
  if (row !== undefined) {
    const cell = column === undefined ? `fila ${row}` : `fila ${row}, columna ${column}`;
    return sheet === undefined ? cell : `hoja ${sheet}, ${cell}`;
  }
  if (byte !== undefined) return `byte ${byte}`;
  return pointer === undefined ? 'el perfil' : `perfil ${pointer}`;
}

function siteInWords(numbers: SiteNumbers): string {
  const { purpose, isPartial, error, warning, info, causes, holes, judged, accepted, notRun, inPart, set } = numbers;
  const parts = [
    counted(error, 'error', 'errores'),
    counted(warning, 'aviso'),
    ...(info > 0 ? [`${info} info`] : []),
  ].join(', ');
  const gaps = [
    ...(accepted === undefined
      ? []
      : [`${counted(accepted, 'hallazgo')} más ${accepted === 1 ? 'aceptado' : 'aceptados'}`]),
    ...(notRun > 0 ? [`${counted(notRun, 'regla')} sin ejecutar`] : []),
    ...(inPart > 0 ? [`${counted(inPart, 'regla')} ${inPart === 1 ? 'ejecutada' : 'ejecutadas'} en parte`] : []),
    ...(set > 0 ? [`${counted(set, 'regla')} con otro ajuste que el usual`] : []),
  ];
  const on = counted(holes, 'perforación', 'perforaciones');
  const ofThem = judged < holes ? `, de las cuales se ${judged === 1 ? 'juzgó' : 'juzgaron'} ${judged}` : '';
  const found = `${parts}${causes > 0 ? ` por ${counted(causes, 'causa')}` : ''} en ${on}${ofThem}`;
  const partial = isPartial ? 'no se puede juzgar todo; ' : '';
  const rest = gaps.length > 0 ? `; ${gaps.join(', ')}` : '';
  // Data are checked, not a site: "revisión de obra" would sound like an inspection.
  return `Comprobación de los datos para la obra (finalidad: ${PURPOSES[purpose]}): ${partial}${found}${rest}.`;
}
