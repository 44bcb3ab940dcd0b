import type { RuleWords } from '../../../model/language.js';
import { counted } from './counted.js';
import { didYouMean } from './in-words.js';
import { prose } from './prose.js';

/** Why rows were left out, behind their number; absent: undefined. */
const REASONS: ReadonlyMap<unknown, string> = new Map([
  ['empty', 'vacías'],
  ['code', 'con un código que no está en el mapa'],
  ['after-end', 'después del final de los datos'],
  ['others', 'por otros motivos'],
]);

/** Rules of the stage table in Spanish. */
export const table: Readonly<Record<string, RuleWords>> = {
  'profile-unfit': {
    title: 'El perfil de columnas se contradice o le falta algo.',
    message: ({ member, problem }) => {
      const said = prose(problem);
      return said && `El perfil de columnas no sirve (${member}): ${said}`;
    },
  },
  'column-missing': {
    title: 'Una columna que nombra el perfil no está en la tabla.',
    message: ({ column, nearest, header, columns, foundAt }) => {
      if (foundAt !== undefined)
        return `Varias columnas se llaman "${column}": las columnas ${(foundAt as number[]).join(' y ')}.`;
      if (nearest !== undefined) return `La tabla no tiene la columna "${column}".${didYouMean(nearest)}`;
      if (columns === 0)
        return `La tabla está vacía: no hay una fila con los nombres de las columnas, por ejemplo "${column}".`;
      const names = (header as string[]).map((name) => `"${name}"`).join(', ');
      return `La tabla no tiene la columna "${column}". Tiene ${columns}${names === '' ? '' : `: ${names}`}.`;
    },
  },
  'quote-not-closed': {
    title: 'Una celda entre comillas no se cierra.',
    message: ({ linesInside }) =>
      `Las comillas que se abren aquí no se cierran; ${linesInside === 1 ? 'no se leyó' : 'no se leyeron'} ${counted(Number(linesInside), 'línea')} más.`,
  },
  'row-length': {
    title: 'Una fila tiene más o menos celdas que las demás.',
    message: ({ what, expected, found, limit }) => {
      const counts = prose(what);
      if (counts === undefined) return undefined;
      return limit === true
        ? `La fila tiene más de ${expected} ${counts}; no se leyó nada después.`
        : `La fila tiene ${found} ${counts} donde se esperan ${expected}; se dejó fuera.`;
    },
  },
  'cell-unreadable': {
    title: 'Una celda no tiene lo que pide su columna.',
    message: ({ column, expected, found }) => {
      const wanted = prose(expected);
      const where = column === undefined ? '' : ` en la columna "${column}"`;
      return wanted && `La celda${where} no se puede leer. Se espera: ${wanted}; se encontró: "${found}".`;
    },
  },
  'cell-empty': {
    title: 'Una celda obligatoria está vacía.',
    message: ({ column }) => `La celda en la columna "${column}" está vacía. La fila se dejó fuera.`,
  },
  'code-unmapped': {
    title: 'Un código no está en el mapa del perfil.',
    message: ({ column, code, nearest, count }) =>
      `"${code}" en la columna "${column}" no está en el mapa del perfil; ${count === undefined || count === 1 ? 'la fila se dejó' : `${count} filas se dejaron`} fuera.${didYouMean(nearest)}`,
  },
  'rows-left-out': {
    title: 'Se dejaron filas fuera porque el perfil lo dice.',
    message: ({ total, reasons }) => {
      const why = (reasons as LeftOut[]).map(inWords);
      if (why.includes(undefined)) return undefined;
      return `${total} ${total === 1 ? 'fila se dejó' : 'filas se dejaron'} fuera como pide el perfil: ${why.join(', ')}.`;
    },
  },
};

interface LeftOut {
  reason: string;
  value?: string;
  count: number;
}

function inWords({ reason, value, count }: LeftOut): string | undefined {
  if (value !== undefined) return `${count} con "${value}"`;
  const why = REASONS.get(reason);
  return why && `${count} ${count === 1 && reason === 'empty' ? 'vacía' : why}`;
}
