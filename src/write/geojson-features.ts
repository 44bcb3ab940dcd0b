import type {
  Area,
  ControlPoint,
  Grid,
  HoleType,
  KeepOut,
  Level,
  Outline,
  Substrate,
  Trade,
} from '../generated/layout.js';
import type { LayoutSource } from '../model/layout-source.js';
import type { LossTally } from './loss.js';
import { keepOutGeometry, outlineGeometry, type SiteGeometry } from './site-geometry.js';

/** A feature before it becomes text. */
export interface SiteFeature {
  /** Kind of the record and its id, unique in the file. */
  readonly id: string;
  readonly featureType: string;
  readonly geometry: SiteGeometry | undefined;
  /** Path of the members that became the geometry. */
  readonly field: string;
  /** The members that became the geometry, as they stood in the layout. */
  readonly drawn: unknown;
  readonly properties: ReadonlyMap<string, unknown>;
}

/** What the features of a layout are made with. */
export interface FeatureSource {
  readonly source: LayoutSource;
  readonly tally: LossTally;
  /** Ids of the records of which a hole carries a part, by collection. */
  readonly used: { readonly trades: Set<string>; readonly holeTypes: Set<string>; readonly levels: Set<string> };
}

const nameTaken = 'the name is taken by a member that the conversion adds';
const notWritten = 'the geometry has no room for it';

/** All features: control, gridlines, areas, substrates and their zones, keep-outs, then the holes. */
export function* siteFeatures(made: FeatureSource): Generator<SiteFeature> {
  const { header } = made.source;
  for (const point of header.control ?? []) yield controlFeature(point, made.tally);
  for (const grid of header.grids ?? []) yield* gridFeatures(grid, made.tally);
  for (const area of header.areas ?? []) yield areaFeature(area, made.tally);
  for (const substrate of header.substrates ?? []) yield* substrateFeatures(substrate, made.tally);
  for (const keepOut of header.keepOuts ?? []) yield keepOutFeature(keepOut, made.tally);
  yield* holeFeatures(made);
}

function* holeFeatures({ source, tally, used }: FeatureSource): Generator<SiteFeature> {
  const trades = byId<Trade>(source.header.trades);
  const holeTypes = byId<HoleType>(source.header.holeTypes);
  const levels = byId<Level>(source.header.levels);
  const substrates = byId<Substrate>(source.header.substrates);
  for (const hole of source.holes()) {
    const type = holeTypes.get(hole.holeType);
    const substrate = substrates.get(hole.substrate ?? '');
    used.trades.add(hole.trade);
    used.holeTypes.add(hole.holeType);
    if (hole.level !== undefined) used.levels.add(hole.level);
    yield {
      id: `hole/${hole.id}`,
      featureType: 'hole',
      geometry: { type: 'Point', coordinates: hole.point },
      field: 'holes/point',
      drawn: hole.point,
      properties: properties('holes', hole, ['point'], tally, {
        tradeName: trades.get(hole.trade)?.name,
        levelName: levels.get(hole.level ?? '')?.name,
        substrateName: substrate?.name,
        holeTypeName: type?.name,
        principle: type?.principle,
        form: type?.form,
        made: type === undefined ? undefined : (type.made ?? 'drilled'),
        purpose: type === undefined ? undefined : (type.purpose ?? 'permanent'),
        effectiveDiameterMm: hole.diameter ?? type?.diameter,
        effectiveDepthMm: hole.depth ?? type?.depth,
        effectiveAxis: hole.axis ?? substrate?.face?.inward,
      }),
    };
  }
}

function controlFeature(point: ControlPoint, tally: LossTally): SiteFeature {
  return {
    id: `control/${point.id}`,
    featureType: 'control',
    geometry: { type: 'Point', coordinates: point.point },
    field: 'control/point',
    drawn: point.point,
    properties: properties('control', point, ['point'], tally),
  };
}

function* gridFeatures(grid: Grid, tally: LossTally): Generator<SiteFeature> {
  for (const name of otherMembers(grid, ['id', 'name', 'building', 'levels', 'lines'])) {
    tally.add(`grids/${name}`, 'only the lines of a grid travel', false);
  }
  for (const [i, line] of grid.lines.entries()) {
    yield {
      id: `gridline/${grid.id}/${i + 1}`,
      featureType: 'gridline',
      geometry: { type: 'LineString', coordinates: [line.from, line.to] },
      field: 'grids/lines',
      drawn: [line.from, line.to],
      properties: properties('grids/lines', line, ['from', 'to'], tally, {
        grid: grid.id,
        gridName: grid.name,
        building: grid.building,
        levels: grid.levels,
      }),
    };
  }
}

function areaFeature(area: Area, tally: LossTally): SiteFeature {
  return {
    id: `area/${area.id}`,
    featureType: 'area',
    geometry: area.outline && outlineGeometry({ points: area.outline }, []).geometry,
    field: 'areas/outline',
    drawn: area.outline,
    properties: properties('areas', area, ['outline'], tally),
  };
}

function* substrateFeatures(substrate: Substrate, tally: LossTally): Generator<SiteFeature> {
  const { outline, openings = [], zones = [] } = substrate;
  const drawn = outline && outlineGeometry(outline, openings);
  // Without an outline there is nothing to cut openings from: they stay among the properties.
  const taken = outline === undefined ? ['zones'] : ['outline', 'openings', 'zones'];
  countOutlines('substrates', outline === undefined ? [] : [outline, ...openings], tally);
  yield {
    id: `substrate/${substrate.id}`,
    featureType: 'substrate',
    geometry: drawn?.geometry,
    field: 'substrates/outline',
    drawn: outline && [outline, openings],
    properties: properties('substrates', substrate, taken, tally, {
      edges: drawn?.edges[0],
      openingEdges: drawn?.edges.slice(1).some((edges) => edges !== undefined)
        ? drawn.edges.slice(1).map((edges) => edges ?? null)
        : undefined,
    }),
  };
  countOutlines(
    'substrates/zones',
    zones.map((zone) => zone.outline),
    tally,
  );
  for (const [i, zone] of zones.entries()) {
    const { geometry, edges } = outlineGeometry(zone.outline, []);
    yield {
      id: `zone/${substrate.id}/${i + 1}`,
      featureType: 'zone',
      geometry,
      field: 'substrates/zones/outline',
      drawn: zone.outline,
      properties: properties('substrates/zones', zone, ['outline'], tally, {
        substrate: substrate.id,
        edges: edges[0],
      }),
    };
  }
}

function keepOutFeature(keepOut: KeepOut, tally: LossTally): SiteFeature {
  const { path, prism, sphere } = keepOut.shape;
  const shapes: readonly [name: string, shape: object | undefined, known: readonly string[]][] = [
    ['path', path, ['points', 'radius']],
    ['prism', prism, ['base', 'extrude']],
    ['sphere', sphere, ['centre', 'radius']],
  ];
  const [shapeKind, shape, known] = shapes.find((candidate) => candidate[1] !== undefined) ?? [];
  for (const name of otherMembers(keepOut.shape, [shapeKind ?? ''])) {
    tally.add(`keepOuts/shape/${name}`, notWritten, false);
  }
  for (const name of otherMembers(shape ?? {}, known ?? [])) {
    tally.add(`keepOuts/shape/${shapeKind}/${name}`, notWritten, false);
  }
  return {
    id: `keepOut/${keepOut.id}`,
    featureType: 'keepOut',
    geometry: keepOutGeometry(keepOut),
    field: 'keepOuts/shape',
    drawn: shape,
    properties: properties('keepOuts', keepOut, ['shape'], tally, {
      shapeKind,
      radiusMm: path?.radius ?? sphere?.radius,
    }),
  };
}

/**
 * The members of a record that are no geometry, under their own names and with all their digits, and
 * after them what the conversion adds.
 */
function properties(
  field: string,
  record: object,
  drawn: readonly string[],
  tally: LossTally,
  added: Readonly<Record<string, unknown>> = {},
): ReadonlyMap<string, unknown> {
  const result = new Map<string, unknown>();
  for (const [name, value] of Object.entries(record)) {
    if (drawn.includes(name) || value === undefined) continue;
    if (Object.hasOwn(added, name) && added[name] !== undefined) tally.add(`${field}/${name}`, nameTaken, false);
    else result.set(name, value);
  }
  for (const [name, value] of Object.entries(added)) {
    if (value !== undefined) result.set(name, value);
  }
  return result;
}

function countOutlines(field: string, outlines: readonly Outline[], tally: LossTally): void {
  for (const outline of outlines) {
    for (const name of otherMembers(outline, ['points', 'edges'])) {
      tally.add(`${field}/outline/${name}`, notWritten, false);
    }
  }
}

/** Names of the members that are there and not among the known. */
export function otherMembers(record: object, known: readonly string[]): string[] {
  return Object.entries(record)
    .filter(([name, value]) => value !== undefined && !known.includes(name))
    .map(([name]) => name);
}

function byId<T extends { id: string }>(records: readonly T[] | undefined): Map<string, T> {
  return new Map((records ?? []).map((record) => [record.id, record]));
}
