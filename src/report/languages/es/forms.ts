import type { FormPhrases } from '../../../model/form-phrases.js';
import { choice } from './choices.js';
import { counted } from './counted.js';
import { reason } from './reason.js';

/** What the forms of a report say of themselves, in Spanish. */
export const forms: FormPhrases = {
  title: 'Comprobación AHX',
  input: (number) => `entrada ${number}`,
  kind: choice,
  reason,
  noReason: 'sin motivo indicado',
  judgedPart: (why, judged, of) =>
    judged === undefined || of === undefined ? `juzgada en parte: ${why}` : `juzgados ${judged} de ${of}: ${why}`,
  holesJudged: (judged, of) =>
    `${judged === 1 ? 'juzgada' : 'juzgadas'} ${judged} de ${counted(of, 'perforación', 'perforaciones')}`,
  unknownKind: 'no se sabe qué es; nada de esto se juzgó',
  inCauses: (findings, causes) => `${findings} por ${counted(causes, 'causa')}`,
  entry: (number) => `entrada ${number} de la línea base`,
  findingsLeftOut: (written, total, listed) =>
    `Aquí se ${written === 1 ? 'muestra' : 'muestran'} ${written} de ${counted(total, 'hallazgo')}, primero los más graves; las cifras de los veredictos los cuentan todos.${listed === undefined ? '' : ` El informe mismo contiene ${listed}.`}`,
  annotationsLeftOut: (causes) =>
    `No se ${causes === 1 ? 'muestra' : 'muestran'} aquí: ${counted(causes, 'causa')} más, ninguna más grave que las de su severidad arriba. El servicio muestra pocas anotaciones de un paso; ahx check --format text, json o sarif dice más.`,
  otherRecord: (name) => (name === undefined ? 'La otra entrada.' : `El otro registro, "${name}".`),
  csv: {
    columns: [
      ...(['entrada', 'regla', 'clase', 'severidad', 'causa', 'id de perforación', 'etiqueta', 'puntero'] as const),
      ...(['línea', 'columna', 'fila', 'mensaje', 'aceptado', 'aceptado por', 'aceptado hasta'] as const),
    ],
    note: 'nota',
  },
  markdown: {
    inputHeads: ['entrada', 'clase', 'revisión', 'perforaciones'],
    causeHeads: ['severidad', 'causa', 'regla', 'hallazgos', 'primera perforación', 'primer lugar'],
    moreInputs: (count) => `y ${counted(count, 'entrada')} más`,
    cause: (id, rule, findings) => `Causa ${id}, ${rule}: ${findings}`,
    unjudged: (notRun, inPart) =>
      [
        ...(notRun > 0 ? [`${counted(notRun, 'regla')} sin ejecutar`] : []),
        ...(inPart > 0 ? [`${counted(inPart, 'regla')} ${inPart === 1 ? 'ejecutada' : 'ejecutadas'} en parte`] : []),
      ].join(', '),
    moreRules: (count) => `y ${counted(count, 'regla')} más`,
    listed: (listed, total) =>
      `El informe contiene ${listed} de ${counted(total, 'hallazgo')}; todas las cifras de arriba son exactas.`,
    leftOut: (causes, lists) => {
      const parts = [
        ...(causes > 0 ? [`${counted(causes, 'causa')} más`] : []),
        ...(lists > 0 ? [`${counted(lists, 'lista')} de hallazgos de las causas de arriba`] : []),
      ];
      return `Se omite aquí: ${parts.join(', ')}. \`ahx check --format json\` da todo.`;
    },
    limits: (findings, bytes) =>
      `Una lista muestra como máximo ${counted(findings, 'hallazgo')} de una causa, en su orden; todo esto ocupa como máximo ${bytes} bytes.`,
  },
};
