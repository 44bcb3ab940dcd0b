const SENTENCES: ReadonlyMap<string, string> = new Map([
  // Types of values.
  ['an object', 'un objeto'],
  ['an array', 'una lista'],
  ['a text', 'un texto'],
  ['a number', 'un número'],
  ['a whole number', 'un número entero'],
  ['true or false', 'true o false'],
  ['null', 'null'],
  ['a single value', 'un solo valor'],
  // Forms of texts.
  ['at least one character', 'al menos un carácter'],
  ['sha256: and 64 lower-case hexadecimal digits', 'sha256: y 64 dígitos hexadecimales en minúsculas'],
  ['EPSG: and a code', 'EPSG: y un código'],
  ['a version of the form 0.N', 'una versión de la forma 0.N'],
  ['# and six hexadecimal digits', '# y seis dígitos hexadecimales'],
  [
    'a date and time with offset, such as 2026-03-02T07:30:00-05:00',
    'fecha y hora con desfase, por ejemplo 2026-03-02T07:30:00-05:00',
  ],
  ['a date, such as 2026-03-02', 'una fecha, por ejemplo 2026-03-02'],
  ['an absolute URI', 'un URI absoluto'],
  ['text without control characters', 'texto sin caracteres de control'],
  [
    'one line without control characters and without a blank at either end',
    'una línea sin caracteres de control y sin espacios al principio ni al final',
  ],
  ['in Unicode normalisation form C', 'la forma de normalización C de Unicode'],
  // Limits.
  ['a direction, with at least one part that is not 0', 'una dirección, con al menos una componente distinta de 0'],
  ['the lower limit first, then the upper one', 'primero el límite inferior y después el superior'],
  [
    'a base with an area and an extrude that leaves its plane',
    'una base con área y un "extrude" que se salga de su plano',
  ],
  ['a prism without volume', 'un prisma sin volumen'],
  // JSON.
  ['more of the document', 'el resto del documento'],
  ['a comma or ]', 'una coma o ]'],
  ['a comma or }', 'una coma o }'],
  ['nothing after the document', 'nada después del documento'],
  ['a member name in double quotes', 'un nombre de campo entre comillas dobles'],
  ['a colon', 'dos puntos'],
  ['a value', 'un valor'],
  [
    'a closing quote; control characters in a text are written as escapes',
    'comillas de cierre; los caracteres de control de un texto se escriben como secuencias de escape',
  ],
  ['one of " \\ / b f n r t u after the backslash', 'uno de " \\ / b f n r t u después de la barra inversa'],
  ['the rest of the text', 'el resto del texto'],
  ['four hexadecimal digits after \\u', 'cuatro dígitos hexadecimales después de \\u'],
  ['a digit', 'un dígito'],
  ['no digit after a leading zero', 'ningún dígito después de un cero inicial'],
  ['a digit after the decimal point', 'un dígito después del punto decimal'],
  ['a digit in the exponent', 'un dígito en el exponente'],
  ['the rest of the number', 'el resto del número'],
  ['the end of the text', 'el final del texto'],
  ['a blank', 'un espacio'],
  ['the end of the line', 'el final de la línea'],
  ['a tab', 'un tabulador'],
  // Encodings.
  ['UTF-16, little-endian', 'UTF-16, little-endian'],
  ['UTF-16, big-endian', 'UTF-16, big-endian'],
  [
    'a packed file such as a spreadsheet workbook; save the sheet as CSV in UTF-8',
    'un archivo comprimido, por ejemplo un libro de hojas de cálculo; guarde la hoja como CSV en UTF-8',
  ],
  // Cells.
  [
    'a plain number with a decimal point, without unit or thousands signs',
    'un número simple con punto decimal, sin unidad ni separadores de miles',
  ],
  [
    'a plain number with a decimal comma, without unit or thousands signs',
    'un número simple con coma decimal, sin unidad ni separadores de miles',
  ],
  ['a number within range', 'un número dentro de los límites'],
  ['a length within range', 'una longitud dentro de los límites'],
  [
    'made of digits, foot and inch marks, a hyphen and a fraction only',
    'solo dígitos, signos de pies y pulgadas, un guion y una fracción',
  ],
  [`feet and inches such as 10'-6 3/8"`, `pies y pulgadas, por ejemplo 10'-6 3/8"`],
  ['a length with a foot or inch mark', 'una longitud con signo de pies o de pulgadas'],
  ['a whole number of feet beside inches', 'un número entero de pies junto a las pulgadas'],
  ['less than 12 inches beside feet', 'menos de 12 pulgadas junto a los pies'],
  ['a whole number of inches beside a fraction', 'un número entero de pulgadas junto a la fracción'],
  ['a fraction in halves, 4ths, 8ths, 16ths, 32nds or 64ths', 'una fracción con denominador 2, 4, 8, 16, 32 o 64'],
  ['a fraction below one inch', 'una fracción menor que una pulgada'],
  [
    'followed by a separator or the end of the row behind its closing quote',
    'un separador o el final de la fila después de las comillas de cierre',
  ],
  [
    'text without U+FFFD, which stands where a character was lost',
    'texto sin U+FFFD, que está donde se perdió un carácter',
  ],
  [
    'a level with exactly one height in soffits in the layout of the profile',
    'un nivel con una sola altura en soffits en el trazo del perfil',
  ],
  ['a level with finishedFloor in the layout of the profile', 'un nivel con finishedFloor en el trazo del perfil'],
  ['a level with structuralTop in the layout of the profile', 'un nivel con structuralTop en el trazo del perfil'],
  ['cells', 'celdas'],
  ['characters in a cell', 'caracteres en una celda'],
  // Column profiles.
  [
    'The comma cannot be decimal sign and separator at once.',
    'La coma no puede ser a la vez signo decimal y separador.',
  ],
  ['The row filter keeps and drops nothing.', 'El filtro de filas no conserva ni descarta nada.'],
  ['Nothing gives the trade of a hole.', 'Nada da la especialidad de una perforación.'],
  ['Nothing gives the hole type of a hole.', 'Nada da el tipo de perforación de una perforación.'],
  ['a comma', 'la coma'],
  ['a semicolon', 'el punto y coma'],
  ['a run of blanks', 'una serie de espacios'],
]);

type Part = (...parts: string[]) => string | undefined;

/** Sentences with parts that come from the file, or with numbers. */
const FORMS: readonly (readonly [RegExp, Part])[] = [
  [/^at least (-?[\d.e+-]+)$/, (limit) => `al menos ${limit}`],
  [/^at most (-?[\d.e+-]+)$/, (limit) => `como máximo ${limit}`],
  [/^more than (-?[\d.e+-]+)$/, (limit) => `más de ${limit}`],
  [/^less than (-?[\d.e+-]+)$/, (limit) => `menos de ${limit}`],
  [/^at most (\d+) characters$/, (count) => `como máximo ${count} caracteres`],
  [/^(\d+) characters$/, (count) => `${count} caracteres`],
  [/^the word (true|false|null)$/, (name) => `la palabra ${name}`],
  [/^byte (0x[0-9A-F]{2})$/, (byte) => `el byte ${byte}`],
  [/^(\d+) of (\d+)$/, (fits, count) => `${fits} de ${count}`],
  [
    /^The layout of a profile has no member "(ahx|kind|holes)"\.$/,
    (name) => `El trazo de un perfil no tiene el campo "${name}".`,
  ],
  [
    /^Without a header the column "(.*)" must be given by number, such as #1\.$/s,
    (column) => `Sin encabezado, la columna "${column}" se indica por número, por ejemplo #1.`,
  ],
  [
    /^The columns "(.*)" and "(.*)" are both ([\w.]+)\.$/s,
    (first, second, field) => `Las columnas "${first}" y "${second}" son las dos ${field}.`,
  ],
  [
    /^The column "(.*)" is a length \(([\w.]+)\) and has no unit\.$/s,
    (column, field) => `La columna "${column}" es una longitud (${field}) y no tiene unidad.`,
  ],
  [
    /^The column "(.*)" \(([\w.]+)\) is no length; its unit means nothing\.$/s,
    (column, field) => `La columna "${column}" (${field}) no es una longitud; su unidad no significa nada.`,
  ],
  [
    /^The column "(.*)" \(([\w.]+)\) is a number and cannot have a map\.$/s,
    (column, field) => `La columna "${column}" (${field}) es un número y no puede tener un mapa.`,
  ],
  [/^No column is the (id|x|y)\.$/, (field) => `Ninguna columna es ${field}.`],
  [
    /^The axis has no column for (axis\.[xyz])(?: and (axis\.[xyz]))?\.$/,
    (first, second) => `El eje no tiene columna para ${second ? `${first} ni ${second}` : first}.`,
  ],
  [
    /^Nothing gives the trade of a hole with code "(.*)"\.$/s,
    (code) => `Nada da la especialidad de una perforación con el código "${code}".`,
  ],
  [
    /^Nothing gives the hole type of a hole with code "(.*)"\.$/s,
    (code) => `Nada da el tipo de perforación de una perforación con el código "${code}".`,
  ],
  [
    /^Heights from ([\w-]+) need a level, and nothing gives one\.$/,
    (reference) => `Las alturas desde ${reference} necesitan un nivel, y nada lo da.`,
  ],
  [
    /^Heights from ([\w-]+) need (a level with [\w ]+ in the layout of the profile); "(.*)" is none\.$/s,
    (reference, level, found) => {
      const needed = SENTENCES.get(level);
      return needed && `Las alturas desde ${reference} necesitan ${needed}; "${found}" no lo es.`;
    },
  ],
  [
    /^Only one column was found; the separator seems to be (.+)\.$/,
    (separator) => {
      const known = SENTENCES.get(separator);
      return known && `Solo se encontró una columna; el separador parece ser ${known}.`;
    },
  ],
  [
    /^No row begins with "(.*)", which should end the data; rows may be missing\.$/s,
    (end) => `Ninguna fila empieza con "${end}", que debería cerrar los datos; pueden faltar filas.`,
  ],
];

/** What English says in the data of a finding, in Spanish; undefined where it is not known. */
export function prose(text: unknown): string | undefined {
  const known = SENTENCES.get(String(text));
  if (known !== undefined) return known;
  for (const [form, put] of FORMS) {
    const [whole, ...parts] = form.exec(String(text)) ?? [];
    if (whole !== undefined) return put(...parts);
  }
  return undefined;
}

/** The same for a text that may be a value of the file, which stays as it is: JSON in one line, or a character. */
export function proseOrValue(text: unknown): string | undefined {
  const known = prose(text);
  return known ?? (/^(?:["[{\d-].*|true|false|null|.)$/su.test(String(text)) ? String(text) : undefined);
}
