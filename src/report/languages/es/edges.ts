import type { RuleWords } from '../../../model/language.js';

/** Rules of the stage geometry about edges and joints in Spanish. */
export const edges: Readonly<Record<string, RuleWords>> = {
  'edge-too-close': {
    title: 'Una perforación está más cerca de un borde del concreto de lo que permite su tipo.',
    message: ({ substrate, beyond = substrate, edge, isGiven, opening, distance, limit, source }, say) =>
      `La perforación está a ${say.length(distance)} de ${edgeInWords(edge, isGiven, opening)} del elemento de concreto "${beyond}"; se necesitan al menos ${say.length(limit)} (${source}).${takenAs(edge, isGiven)}`,
    causeMessage: ({ substrate, beyond = substrate, edge, isGiven, opening, limit, source, holeType }, say) =>
      `Hay perforaciones del tipo "${holeType}" a menos de ${say.length(limit)} de ${edgeInWords(edge, isGiven, opening)} del elemento de concreto "${beyond}" (${source}).${takenAs(edge, isGiven)}`,
  },
  'breaks-out-at-edge': {
    title: 'Una perforación sale del concreto por un borde o un hueco.',
    message: ({ edge, distance, radius, at }, say) =>
      `La perforación sale por ${edge === 'opening' ? 'un hueco' : 'un borde'}: su eje pasa a ${say.length(distance)} de él${at === 'inside' ? ' en su recorrido dentro del concreto' : ''}, y la mitad de la broca mide ${say.length(radius)}.`,
    causeMessage: ({ substrate }) =>
      `Hay perforaciones que salen del elemento de concreto "${substrate}" por bordes o huecos.`,
  },
  'edge-kind-assumed': {
    title: 'Los bordes de un elemento de concreto se toman como concreto que continúa, porque otro elemento los toca.',
    message: ({ substrate, edges: count, length, other }, say) => {
      const others =
        other === undefined ? 'lo tocan otros' : `lo toca el elemento "${other}"${Number(count) > 1 ? ' u otro' : ''}`;
      return `No se dice nada de los bordes del elemento de concreto "${substrate}". Donde ${others}, ${say.length(length)} de borde se toman como concreto que continúa.`;
    },
    causeMessage: () =>
      'Hay elementos de concreto que se tocan y no se dice nada de sus bordes; donde se tocan, se toma que el concreto continúa.',
  },
  'near-movement-joint': {
    title: 'Una perforación está más cerca de una junta de movimiento de lo que su tipo permite respecto de un borde.',
    message: ({ substrate, distance, limit, source }, say) =>
      `La perforación está a ${say.length(distance)} de una junta de movimiento del elemento de concreto "${substrate}"; hasta un borde se necesitan al menos ${say.length(limit)} (${source}).`,
    causeMessage: ({ substrate, limit, source, holeType }, say) =>
      `Hay perforaciones del tipo "${holeType}" a menos de ${say.length(limit)} de una junta de movimiento del elemento de concreto "${substrate}" (${source}).`,
  },
};

function edgeInWords(edge: unknown, isGiven: unknown, opening: unknown): string {
  if (edge === 'opening') return opening === undefined ? 'un borde en un hueco' : 'un hueco';
  return isGiven ? 'un borde libre' : 'un borde';
}

function takenAs(edge: unknown, isGiven: unknown): string {
  return edge === 'free' && !isGiven ? ' No se da la clase del borde; se toma como libre.' : '';
}
