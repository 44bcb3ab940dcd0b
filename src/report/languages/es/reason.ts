const REASONS: ReadonlyMap<string, string> = new Map([
  ['it is off unless asked for', 'está apagada si no se pide'],
  ['the text could not be read to its end', 'el texto no se pudo leer hasta el final'],
  ['the version of AHX is not known', 'no se conoce la versión de AHX'],
  ['a required extension is not known', 'no se conoce una extensión requerida'],
  ['the table could not be read with the profile', 'la tabla no se pudo leer con el perfil'],
  ['the kind of the document is not known', 'no se conoce la clase del documento'],
  ['an input cannot be read', 'una entrada no se puede leer'],
  ['record broken', 'registro dañado'],
  ['unit or frame of its layout in doubt', 'unidad o marco de referencia de su trazo en duda'],
  ['height not known', 'altura desconocida'],
  ['height not known on an upright face', 'altura desconocida en una cara vertical'],
  [
    'height not known, and no substrate to compare in plan',
    'altura desconocida, y sin elemento para comparar en planta',
  ],
  ['height of a member not known', 'altura desconocida de un miembro'],
  [
    'height of a member not known on an upright face with zones',
    'altura desconocida de un miembro en una cara vertical con zonas',
  ],
  ['depth not known', 'profundidad desconocida'],
  ['diameter not known', 'diámetro desconocido'],
  ['axis not known', 'eje desconocido'],
  ['thickness not known', 'espesor desconocido'],
  ['level not known', 'nivel desconocido'],
  ['level without heights', 'nivel sin alturas'],
  ['no level named', 'sin nivel indicado'],
  ['no level that can be read', 'ningún nivel que se pueda leer'],
  ['no substrate named', 'sin elemento de concreto indicado'],
  ['substrate without a face', 'elemento de concreto sin cara'],
  ['substrate without an outline', 'elemento de concreto sin contorno'],
  ['record of its substrate broken', 'registro de su elemento de concreto dañado'],
  ['record of its area broken', 'registro de su área dañado'],
  ['record of its hole type broken', 'registro de su tipo de perforación dañado'],
  ['record of its hole type or group broken', 'registro de su tipo de perforación o grupo dañado'],
  ['record of its group or type broken', 'registro de su grupo o tipo dañado'],
  ['record of the group broken', 'registro del grupo dañado'],
  ['record of a keep-out broken', 'registro de una zona de exclusión dañado'],
  ['a record of the control broken', 'un registro del control dañado'],
  ['a record broken that may show a scan', 'dañado un registro que puede mostrar un escaneo'],
  ['a hole whose group cannot be read', 'una perforación cuyo grupo no se puede leer'],
  ['list of bores that cannot be read', 'lista de perforaciones existentes ilegible'],
  ['list of keep-outs that cannot be read', 'lista de zonas de exclusión ilegible'],
  ['the collection that it refers to cannot be read', 'la colección a la que hace referencia no se puede leer'],
  ['axis does not point into the concrete', 'el eje no entra en el concreto'],
  ['not on the concrete of its substrate', 'fuera del concreto de su elemento'],
  ['point not on the face of its substrate', 'punto fuera de la cara de su elemento'],
  ['no hole names the group', 'ninguna perforación nombra el grupo'],
  ['another number of members than places', 'número de miembros distinto del de lugares'],
  ['a run, and no face of all members', 'con dirección del grupo y sin una cara común'],
  ['run square to the face', 'dirección del grupo perpendicular a la cara'],
  ['faces of different directions', 'caras de distinta dirección'],
  ['no control point with a sigma', 'ningún punto de control con sigma'],
  ['control mirrored', 'control en espejo'],
  ['no time was given to compare with (asOf)', 'no se dio una fecha con la cual comparar (asOf)'],
  ['nominal size of the bit without a length and unit', 'tamaño nominal de la broca sin longitud ni unidad'],
  ['rod without a size and unit', 'varilla roscada sin tamaño ni unidad'],
  ['width of the flutes not known', 'ancho de los valles desconocido'],
  ['where the flutes lie is not known', 'no se sabe dónde están los valles'],
  ['flutes wider than they are apart', 'valles más anchos que su separación'],
  [
    'level of the hole not known where an area may hold it',
    'nivel desconocido de una perforación que puede estar en un área',
  ],
  [
    'neither a level of its substrate nor a height and an elevation',
    'sin nivel de su elemento, y sin altura o cota del nivel',
  ],
  [
    'depth or diameter of a bore near it not known',
    'profundidad o diámetro desconocidos de una perforación existente cercana',
  ],
  ['numbers too large or too small to compute with', 'números demasiado grandes o pequeños para calcular'],
  ['too many holes near it', 'demasiadas perforaciones cercanas'],
  ['too many bores near it', 'demasiadas perforaciones existentes cercanas'],
  ['too many keep-outs near it', 'demasiadas zonas de exclusión cercanas'],
  ['too many joints near', 'demasiadas juntas cercanas'],
  ['far too long for its diameter', 'demasiado larga para su diámetro'],
  ['so long or wide that it meets too many others', 'tan larga o ancha que toca demasiadas otras'],
  ['keep-out without a volume', 'zona de exclusión sin volumen'],
  ['more edges at one place than are compared', 'más bordes en un lugar de los que se comparan'],
  [
    'more equal tags than are compared letter by letter',
    'más etiquetas iguales de las que se comparan letra por letra',
  ],
  ['more marks with one text than are compared', 'más marcas con un mismo texto de las que se comparan'],
  [
    'too many control points without a level for so many levels',
    'demasiados puntos de control sin nivel para tantos niveles',
  ],
  [
    'fewer than 5 holes whose place on a substrate can be compared',
    'menos de 5 perforaciones cuyo lugar en un elemento se pueda comparar',
  ],
  [
    'fewer than 5 holes whose place on a substrate can be compared, and fewer than 3 groups whose pattern differs from its mirror image',
    'menos de 5 perforaciones cuyo lugar en un elemento se pueda comparar, y menos de 3 grupos cuyo patrón difiera de su imagen en espejo',
  ],
]);

/** Why something was not judged, in Spanish; as the report has it where the reason is not known. */
export function reason(text: string): string {
  const [, count, leftOut = text] = /^(\d+) left out: (.*)$/s.exec(text) ?? [];
  const said = one(leftOut);
  if (said === undefined) return text;
  return count === undefined ? said : `${count === '1' ? 'se omite' : 'se omiten'} ${count}: ${said}`;
}

function one(text: string): string | undefined {
  const known = REASONS.get(text);
  if (known !== undefined) return known;
  const [, ofBore] = /^bore: (.*)$/s.exec(text) ?? [];
  if (ofBore !== undefined) {
    const said = ofBores.get(ofBore) ?? REASONS.get(ofBore);
    return said && `perforación existente: ${said}`;
  }
  const [, ofMember] = /^a member is not judged \((.*)\)$/s.exec(text) ?? [];
  const said = ofMember === undefined ? undefined : REASONS.get(ofMember);
  if (said !== undefined) return `un miembro no se juzga (${said})`;
  const [, most] = /^more than (\d+) (?:places|members, and no face of all)$/.exec(text) ?? [];
  if (most === undefined) return undefined;
  return text.endsWith('places') ? `más de ${most} lugares` : `más de ${most} miembros y ninguna cara común`;
}

const ofBores: ReadonlyMap<string, string> = new Map([
  ['height not known, and no face that gives it', 'altura desconocida, y ninguna cara que la dé'],
  ['so long or wide that it meets too many holes', 'tan larga o ancha que toca demasiadas perforaciones'],
]);
