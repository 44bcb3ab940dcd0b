import type { Language } from '../../model/language.js';
import { completeness } from './es/completeness.js';
import { concrete } from './es/concrete.js';
import { control } from './es/control.js';
import { edges } from './es/edges.js';
import { frame } from './es/frame.js';
import { holes } from './es/holes.js';
import { phrases } from './es/phrases.js';
import { reading } from './es/reading.js';
import { records } from './es/records.js';
import { table } from './es/table.js';
import { trades } from './es/trades.js';

/**
 * Reports in Spanish, in the words of sites in Mexico and the United States. Numbers stay as they stand in the file,
 * names of members and ids of rules are not translated.
 *
 * Glossary: approval aprobación · area área · axis eje · bar varilla de refuerzo · bit broca · bore perforación
 * existente · control point punto de control · deck lámina acanalada · depth profundidad · edge borde · embedment
 * empotramiento · face cara · finding hallazgo · flute, low: valle, high: cresta · frame marco de referencia · group
 * grupo · height altura · hole perforación (blind ciega, through pasante) · hole type tipo de perforación · keep-out
 * zona de exclusión · layout trazo · level nivel · mark marca · member (of a document) campo, (of a group) miembro ·
 * movement joint junta de movimiento · opening hueco · outline contorno · pattern patrón · permit permiso · plank,
 * hollow: losa alveolar, its voids: alvéolos · profile perfil · record registro · release liberación · revision
 * revisión · rod varilla roscada · row fila · run (of a group) dirección · scan escaneo · set-up estación · slab losa
 * · soffit cara inferior · substrate elemento de concreto · tag etiqueta · tendon tendón · thickness espesor ·
 * tolerance tolerancia · trade especialidad · web (of a deck) alma · zone zona. Severities: error error, warning
 * aviso, info info.
 */
export const es: Language = {
  tag: 'es',
  rules: {
    ...reading,
    ...table,
    ...records,
    ...frame,
    ...holes,
    ...edges,
    ...concrete,
    ...control,
    ...trades,
    ...completeness,
  },
  phrases,
};
