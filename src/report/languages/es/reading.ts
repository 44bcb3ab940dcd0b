import type { RuleWords } from '../../../model/language.js';
import { didYouMean, expectedAndFound } from './in-words.js';
import { prose } from './prose.js';

/** Rules of the stages bytes, JSON and schema in Spanish. */
export const reading: Readonly<Record<string, RuleWords>> = {
  'not-utf8': {
    title: 'El texto no es UTF-8.',
    message: ({ found }) => {
      if (String(found).startsWith('0x')) return `El texto no es UTF-8 aquí (${found}).`;
      const seen = prose(found);
      return seen && `El archivo parece ser ${seen}; debe ser texto en UTF-8.`;
    },
  },
  'byte-order-mark': {
    title: 'El texto empieza con una marca de orden de bytes.',
    message: () => 'El archivo empieza con una marca de orden de bytes; se pasó por alto.',
  },
  'json-syntax': {
    title: 'El texto no es JSON.',
    message: ({ expected, found }) => {
      const said = expectedAndFound(expected, found);
      return said && `El texto no es JSON aquí. ${said}. No se juzgó nada después de este lugar.`;
    },
  },
  'nested-too-deep': {
    title: 'Hay demasiadas listas y objetos unos dentro de otros.',
    message: ({ limit }) =>
      `Aquí hay más de ${limit} listas y objetos unos dentro de otros. No se juzgó nada después de este lugar.`,
  },
  'duplicate-name': {
    title: 'Un objeto tiene dos campos con el mismo nombre.',
    message: ({ name }) =>
      `El campo "${name}" aparece dos veces en un objeto; no se puede saber cuál de los dos valores vale.`,
  },
  'number-out-of-range': {
    title: 'Un número es mayor que cualquier número de doble precisión.',
    message: ({ written }) => `El número ${written} es mayor que cualquiera que los programas puedan guardar.`,
  },
  'number-loses-digits': {
    title: 'Un número tiene más dígitos de los que guarda la doble precisión.',
    message: ({ written, read }) =>
      `El número ${written} tiene más dígitos de los que guardan los programas; se lee como ${read}.`,
  },
  'lone-surrogate': {
    title: 'Un texto tiene la mitad de un par sustituto.',
    message: ({ codePoint }) => `El texto tiene ${codePoint}, la mitad de un carácter.`,
  },
  noncharacter: {
    title: 'Un texto tiene un código de Unicode que no es carácter.',
    message: ({ codePoint }) => `El texto tiene ${codePoint}, que no es un carácter.`,
  },
  'unsupported-version': {
    title: 'El documento está escrito en una versión de AHX que este programa no conoce.',
    message: ({ found, supported }) =>
      `El documento está escrito en AHX ${found}; este programa conoce ${supported} y no puede juzgarlo.`,
  },
  'required-extension-unknown': {
    title: 'El documento necesita una extensión que este programa no conoce.',
    message: ({ extension }) =>
      `El documento necesita la extensión ${extension}, que este programa no conoce; no puede juzgar el documento.`,
  },
  'missing-member': {
    title: 'Falta un campo obligatorio.',
    message: ({ member }) => `Falta el campo "${member}".`,
  },
  'unknown-member': {
    title: 'Un campo tiene un nombre que AHX no conoce.',
    message: ({ member, nearest }) => `AHX no tiene aquí ningún campo "${member}".${didYouMean(nearest)}`,
  },
  'wrong-type': {
    title: 'Un valor es del tipo equivocado.',
    message: ({ expected, found }) => {
      const [wanted, seen] = [prose(expected), prose(found)];
      return wanted && seen && `Aquí debe haber ${wanted}, no ${seen}.`;
    },
  },
  'wrong-count': {
    title: 'Una lista o un objeto tiene muy pocas o demasiadas partes.',
    message: ({ expected, found }) => {
      const wanted = prose(expected);
      return wanted && `El número de partes aquí debe ser ${wanted}; hay ${found}.`;
    },
  },
  'not-a-choice': {
    title: 'Un valor no es ninguna de las opciones.',
    message: ({ choices, found, nearest }) =>
      `${found} no es ninguna de las opciones.${nearest === undefined ? ` Son: ${(choices as unknown[]).join(', ')}.` : didYouMean(nearest)}`,
  },
  'out-of-range': {
    title: 'Un número está fuera de sus límites.',
    message: ({ expected, found }) => {
      const said = expectedAndFound(expected, found);
      return said && `El valor está fuera de sus límites. ${said}.`;
    },
  },
  'bad-text': {
    title: 'Un texto no tiene la forma que debe tener.',
    message: ({ expected, found }) => {
      const said = expectedAndFound(expected, found);
      return said && `El texto no tiene la forma debida. ${said}.`;
    },
  },
};
