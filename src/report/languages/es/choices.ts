const CHOICES: ReadonlyMap<string, string> = new Map([
  // Kinds of documents.
  ['layout', 'trazo'],
  ['report', 'informe'],
  ['column-profile', 'perfil de columnas'],
  ['config', 'configuración'],
  ['baseline', 'línea base'],
  ['unknown', 'desconocido'],
  // What a layout is handed over for.
  ['coordination', 'coordinación'],
  ['review', 'revisión'],
  ['construction', 'construcción'],
  ['as-built', 'estado construido'],
  ['record', 'archivo'],
  // Roles.
  ['coordinator', 'coordinador'],
  ['engineer-of-record', 'ingeniero responsable'],
  ['general-contractor', 'contratista general'],
  ['trade-contractor', 'contratista de especialidad'],
  ['foreman', 'capataz'],
  ['surveyor', 'topógrafo'],
  ['scanner', 'técnico de escaneo'],
  ['driller', 'perforador'],
  ['quality', 'control de calidad'],
  ['inspector', 'inspector'],
  ['owner', 'propietario'],
  ['other', 'otro'],
  // Kinds of sources.
  ['structural-drawing', 'plano estructural'],
  ['deck-shop-drawing', 'plano de taller de la lámina'],
  ['tendon-drawing', 'plano de tendones'],
  ['ceiling-plan', 'plano de plafones'],
  ['model', 'modelo'],
  ['control-sheet', 'hoja de control'],
  ['product-approval', 'aprobación de producto'],
  ['survey', 'levantamiento'],
  ['scan', 'escaneo'],
  ['point-list', 'lista de puntos'],
  ['specification', 'especificación'],
  // Classes of control points.
  ['primary', 'principal'],
  ['secondary', 'secundario'],
  ['check', 'comprobación'],
  // Hole types.
  ['torque-controlled', 'expansión controlada por par'],
  ['displacement-controlled', 'expansión controlada por desplazamiento'],
  ['undercut', 'socavado'],
  ['screw', 'tornillo'],
  ['adhesive', 'adhesivo'],
  ['through-bolt', 'perno pasante'],
  ['cast-in', 'colocado antes del colado'],
  ['none', 'ninguno'],
  ['blind', 'ciega'],
  ['through', 'pasante'],
  ['drilled', 'perforada con broca'],
  ['cored', 'perforada con corona'],
  // Kinds of groups.
  ['hanger', 'colgante'],
  ['trapeze', 'trapecio'],
  ['plate', 'placa'],
  ['brace', 'riostra'],
  ['rail', 'riel'],
  // Kinds of changes.
  ['added', 'agregada'],
  ['removed', 'retirada'],
  ['moved', 'movida'],
  ['respecified', 'especificada de otro modo'],
  ['reassigned', 'asignada de otro modo'],
  ['renumbered', 'etiquetada de otro modo'],
  ['redefined', 'definida de otro modo'],
]);

/** A choice of the format in Spanish; as it is where it is not known. */
export function choice(value: string): string {
  return CHOICES.get(value) ?? value;
}
