import { readdirSync, readFileSync } from 'node:fs';
import type { Georeference, Layout } from '../../src/generated/layout.js';
import type { LayoutSource, Loss } from '../../src/model/layout-source.js';
import { type GeoJsonOptions, writeGeoJson } from '../../src/write/geojson.js';

/** Invented: a slab with an opening, a wall, keep-outs of every shape, and what else becomes a feature. */
export const sampleLayout: Layout = {
  ahx: '0.1',
  kind: 'layout',
  id: 'L-7',
  title: 'Boat house (invented)',
  revision: { label: 'B' },
  project: { name: 'Boat house (invented)' },
  frame: { name: 'Boat house grid', heightDatum: 'slipway bolt' },
  levels: [
    { id: 'G', name: 'Ground', elevation: 0 },
    { id: 'R', name: 'Roof' },
  ],
  grids: [
    {
      id: 'main',
      name: 'Column grid',
      levels: ['G'],
      lines: [
        { name: 'A', from: [0, 0], to: [12000, 0] },
        { name: '1', from: [0, -500.5], to: [0, 8000] },
      ],
    },
  ],
  control: [{ id: 'C1', point: [100, 200], class: 'primary', sigmaPlan: 1.5 }],
  areas: [
    // Clockwise on purpose.
    {
      id: 'pour 1',
      name: 'Pour 1',
      outline: [
        [0, 0],
        [0, 8000],
        [12000, 8000],
        [12000, 0],
      ],
      kinds: ['pour'],
    },
    { id: 'night', name: 'Night work' },
  ],
  trades: [
    { id: 'S', name: 'Sprinkler', firm: 'Example Fire Protection' },
    { id: 'D', name: 'Duct' },
  ],
  holeTypes: [
    {
      id: 'H12',
      name: '12 mm screw',
      principle: 'screw',
      form: 'blind',
      diameter: 12,
      depth: 60,
      minSpacing: { value: 80, source: 'example approval, table 3' },
    },
  ],
  substrates: [
    {
      id: 'slab',
      name: 'Slab over ground',
      kind: 'solid-slab',
      level: 'G',
      face: { point: [0, 0, 3000], inward: [0, 0, 1] },
      // Clockwise seen in plan, so it is turned round.
      outline: {
        points: [
          [0, 0, 3000],
          [0, 8000, 3000],
          [12000, 8000, 3000],
          [12000, 0, 3000],
        ],
        edges: ['free', 'continuous', 'movement-joint', 'construction-joint'],
      },
      openings: [
        {
          points: [
            [1000, 1000, 3000],
            [2000, 1000, 3000],
            [2000, 2500, 3000],
          ],
        },
      ],
      thickness: 250,
      zones: [
        {
          kind: 'drop',
          outline: {
            points: [
              [5000, 5000, 2900],
              [6000, 5000, 2900],
              [6000, 6000, 2900],
            ],
          },
          thickness: 350,
          offset: -100,
        },
      ],
    },
    {
      id: 'wall',
      kind: 'wall',
      outline: {
        points: [
          [0, 0, 0],
          [3000, 4000, 0],
          [3000, 4000, 2800],
          [0, 0, 2800],
        ],
      },
      thickness: 200,
    },
  ],
  keepOuts: [
    {
      id: 'K1',
      kind: 'tendon',
      shape: {
        path: {
          points: [
            [0, 3000, 3125],
            [12000, 3000, 3080],
          ],
          radius: 35,
        },
      },
      standoff: 50,
      knownFrom: 'shop-drawing',
    },
    {
      id: 'K2',
      kind: 'embed',
      shape: { sphere: { centre: [700, 700, 3040], radius: 60 } },
      standoff: 0,
      knownFrom: 'scan',
    },
    {
      id: 'K3',
      kind: 'other',
      shape: {
        prism: {
          base: [
            [0, 0, 3200],
            [0, 400, 3200],
            [300, 400, 3200],
            [300, 0, 3200],
          ],
          extrude: [0, 0, -150],
        },
      },
      standoff: 10,
      positionTolerance: 20,
      knownFrom: 'survey',
    },
    {
      id: 'K4',
      kind: 'conduit',
      shape: {
        prism: {
          base: [
            [0, 0, 3050],
            [0, 100, 3050],
            [0, 100, 3100],
            [0, 0, 3100],
          ],
          extrude: [2000, 0, 0],
        },
      },
      standoff: 25,
      knownFrom: 'design-drawing',
    },
  ],
  groups: [{ id: 'P1', kind: 'plate' }],
  holes: [
    {
      id: 'H-1',
      tag: '1',
      trade: 'S',
      holeType: 'H12',
      substrate: 'slab',
      level: 'G',
      point: [1234.5, -678.000001, 3000],
      depth: 70,
      note: 'beside the duct',
    },
    { id: 'a/b', trade: 'S', holeType: 'H12', point: [0.396875, 12] },
  ],
};

/** Invented: the middle of a zone, in the open sea. */
export const georeference: Georeference = {
  crs: 'EPSG:32631',
  eastings: 500000,
  northings: 100000,
  height: 0,
  xAxisAbscissa: 0.8,
  xAxisOrdinate: 0.6,
  scale: 0.001,
};
/** The sample on the map. */
export const placedLayout: Layout = { ...sampleLayout, frame: { ...sampleLayout.frame, georeference } };

/** All examples but the deliberately poor one, whose records break the schema. */
export function exampleLayouts(): [name: string, layout: Layout][] {
  const folder = new URL('../../examples/', import.meta.url);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ahx.json') && !name.startsWith('poor'))
    .map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Layout]);
}

export function sourceOf(layout: Layout): LayoutSource {
  const { holes, ...header } = layout;
  return { header, holeCount: holes.length, holes: () => holes };
}

/** The text of a layout, what was lost, and the parsed document. */
export function convert(
  layout: Layout,
  options: GeoJsonOptions = {},
): { text: string; losses: Loss[]; document: FeatureCollection } {
  const losses: Loss[] = [];
  const text = [...writeGeoJson(sourceOf(layout), options, (loss) => losses.push(loss))].join('');
  return { text, losses, document: JSON.parse(text) as FeatureCollection };
}

export interface FeatureCollection {
  conformsTo: string[];
  coordRefSys: string;
  features: Feature[];
  [member: string]: unknown;
}

export interface Feature {
  id: string;
  featureType: string;
  geometry: { type: string; coordinates: unknown } | null;
  place: { type: string; coordinates: unknown } | null;
  properties: Record<string, unknown>;
}

export function featureOf(document: FeatureCollection, id: string): Feature {
  const feature = document.features.find((candidate) => candidate.id === id);
  if (feature === undefined) throw new Error(`No feature ${id}.`);
  return feature;
}

/** The coordinates of a place or geometry that must be there. */
export function coordinatesOf<T>(geometry: { coordinates: unknown } | null): T {
  if (geometry === null) throw new Error('No geometry.');
  return geometry.coordinates as T;
}
