import type { Frame } from '../../generated/layout.js';
import type { FramePhrases } from './html-phrases.js';
import type { Content, Markup } from './markup.js';
import { displayOf, distinctRecords, type HtmlReportParts, lengthsOf, recordsOf, unitName } from './reported-layout.js';
import { facts, section, table } from './table.js';

/** Where the numbers count from: frames, levels and control. */
export function frameSection({ layouts, language: { html: words } }: HtmlReportParts): Markup | undefined {
  const display = displayOf(layouts);
  const say = lengthsOf(display);
  const unit = unitName(display, words);
  const height = (mm: number | undefined) => (mm === undefined ? undefined : say(mm));
  const frames = new Map(
    layouts.flatMap(({ model: { header } }) => (header.frame ? [[JSON.stringify(header.frame), header.frame]] : [])),
  );
  const buildings = new Map(recordsOf(layouts, 'buildings').map(({ record: { id, name } }) => [id, name]));
  const levels = distinctRecords(layouts, 'levels').map((level) => [
    level.name,
    level.building && (buildings.get(level.building) ?? level.building),
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
    height(z) ?? words.frame.heightNotGiven,
    point.class && words.choice(point.class),
    height(point.sigmaPlan),
    height(point.sigmaHeight),
    point.source,
    point.verified ?? point.date,
    point.replacedBy,
  ]);
  return section(
    'frame',
    words.frame.heading,
    [...frames.values()].map((frame) => facts(aboutFrame(frame, words.frame))),
    table(words.frame.levels(unit), words.frame.levelHeads, levels),
    table(words.frame.control(unit), words.frame.controlHeads, points),
  );
}

function aboutFrame(
  { name, heightDatum, trueNorthDeg, projectNorthDeg, georeference, note }: Frame,
  words: FramePhrases,
): [string, Content][] {
  const turned = (degrees: number | undefined) => (degrees === undefined ? undefined : words.turned(degrees));
  return [
    [words.siteFrame, words.aboutAxes(name)],
    [words.heightsFrom, heightDatum],
    [words.trueNorth, turned(trueNorthDeg)],
    [words.projectNorth, turned(projectNorthDeg)],
    [words.map, georeference && words.georeference(georeference.crs, georeference.eastings, georeference.northings)],
    [words.note, note],
  ];
}
