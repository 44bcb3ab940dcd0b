const WORDS: ReadonlyMap<string, string> = new Map([
  // Principles of anchors, behind "ancla" or "anclas".
  ['torque-controlled', 'de expansión controlada por par'],
  ['displacement-controlled', 'de expansión controlada por desplazamiento'],
  ['undercut', 'de socavado'],
  ['screw', 'de tornillo'],
  ['adhesive', 'de adhesivo'],
  ['through-bolt', 'de perno pasante'],
  // Kinds of keep-outs.
  ['tendon', 'tendón'],
  ['bar', 'varilla de refuerzo'],
  ['conduit', 'tubo conduit'],
  ['embed', 'inserto ahogado'],
  ['live-service', 'instalación en servicio'],
  ['other', 'otro'],
  // Where something is known from, behind "según".
  ['design-drawing', 'un plano de diseño'],
  ['shop-drawing', 'un plano de taller'],
  ['scan', 'un escaneo'],
  ['survey', 'un levantamiento'],
  // How a bore ended.
  ['complete', 'completa'],
  ['partial', 'parcial'],
  ['abandoned', 'abandonada'],
  // Kinds of groups.
  ['hanger', 'colgante'],
  ['trapeze', 'trapecio'],
  ['plate', 'placa'],
  ['brace', 'arriostramiento'],
  ['rail', 'riel'],
  // Conditions of areas.
  ['access', 'acceso'],
  ['closed', 'cierre'],
  ['rated', 'clasificación'],
  ['clean', 'limpieza'],
  ['noise-hours', 'horario de ruido'],
  // Directions of drilling.
  ['up', 'hacia arriba'],
  ['down', 'hacia abajo'],
  ['horizontal', 'en horizontal'],
  // Sizes.
  ['diameter', 'diámetro'],
  ['depth', 'profundidad'],
  ['thickness', 'espesor'],
  ['bit', 'broca'],
  // Sets of coordinates, with their article.
  ['holes', 'las perforaciones'],
  ['substrates', 'los elementos de concreto'],
  ['control points', 'los puntos de control'],
  ['outlines', 'los contornos'],
  ['gridlines', 'los ejes de la retícula'],
  // Units.
  ['inches', 'pulgadas'],
  ['feet', 'pies'],
  ['US survey feet', 'pies topográficos de EE. UU.'],
  ['metres', 'metros'],
  ['centimetres', 'centímetros'],
  // Heights.
  ['plan', 'planta'],
  ['height', 'altura'],
  ['height datum', 'el origen de las alturas'],
  ['name', 'el nombre del marco de referencia'],
  ['zero', 'cero'],
  ['the finished floor', 'el piso terminado'],
  ['the structural top', 'el nivel superior de la estructura'],
  ['the datum of the level', 'la cota de referencia del nivel'],
  ['the top of the slab', 'la cara superior de la losa'],
  ['the underside of the slab', 'la cara inferior de la losa'],
  ['the finished floor of another level', 'el piso terminado de otro nivel'],
  ['the structural top of another level', 'el nivel superior de la estructura de otro nivel'],
  ['a soffit of another level', 'una cara inferior de otro nivel'],
]);

/** A code or a fixed term of the data of a finding in Spanish; as it is where none is known. */
export function word(term: unknown): string {
  const text = String(term);
  return WORDS.get(text) ?? text;
}

/** Terms joined by commas, each in Spanish. */
export function words(terms: unknown): string {
  return String(terms).split(', ').map(word).join(', ');
}
