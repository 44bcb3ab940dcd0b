import type { Frame } from '../../generated/layout.js';
import { type Content, html, type Markup } from './markup.js';
import { displayOf, distinctRecords, type HtmlReportParts, lengthsOf, recordsOf, unitName } from './reported-layout.js';
import { facts, section, table } from './table.js';

/** Where the numbers count from: frames, levels and control. */
export function frameSection({ layouts }: HtmlReportParts): Markup | undefined {
  const display = displayOf(layouts);
  const say = lengthsOf(display);
  const unit = unitName(display);
  const height = (mm: number | undefined) => (mm === undefined ? undefined : say(mm));
  const frames = new Map(
    layouts.flatMap(({ model: { header } }) => (header.frame ? [[JSON.stringify(header.frame), header.frame]] : [])),
  );
  const levels = distinctRecords(layouts, 'levels').map((level) => [
    level.name,
    level.building,
    height(level.elevation),
    height(level.finishedFloor),
    height(level.structuralTop),
    level.soffits?.map((mm) => say(mm)).join(', '),
  ]);
  const control = new Map(
    recordsOf(layouts, 'control').map(({ record, layout }) => {
      const sources = layout.model.collection('sources').records;
      const source = sources.find((one) => one?.id === record.source)?.title ?? record.source;
      return [JSON.stringify([record, source]), { ...record, source }];
    }),
  );
  const points = [...control.values()].map(({ id, point: [x, y, z], ...point }) => [
    id,
    say(x),
    say(y),
    height(z) ?? 'not given',
    point.class,
    height(point.sigmaPlan),
    height(point.sigmaHeight),
    point.source,
    point.verified ?? point.date,
    point.replacedBy,
  ]);
  return section(
    'frame',
    'Frame, levels and control',
    [...frames.values()].map((frame) => facts(aboutFrame(frame))),
    table(
      `Levels, heights in ${unit} above the datum`,
      ['Level', 'Building', 'Datum', 'Finished floor', 'Structural top', 'Soffits'],
      levels,
    ),
    table(
      `Control points, ${unit}, site frame`,
      ['Point', 'x', 'y', 'Height', 'Class', 'Sigma in plan', 'Sigma of height', 'Source', 'Verified', 'Replaced by'],
      points,
    ),
  );
}

function aboutFrame({
  name,
  heightDatum,
  trueNorthDeg,
  projectNorthDeg,
  georeference,
  note,
}: Frame): [string, Content][] {
  const turned = (degrees: number | undefined) =>
    degrees === undefined ? undefined : `${degrees}° clockwise from the y axis`;
  return [
    ['Site frame', html`${name}: right-handed, z up, x and y plan coordinates`],
    ['Heights count from', heightDatum],
    ['True north', turned(trueNorthDeg)],
    ['Project north', turned(projectNorthDeg)],
    ['Map', georeference && `${georeference.crs}, origin at ${georeference.eastings} E, ${georeference.northings} N`],
    ['Note', note],
  ];
}
