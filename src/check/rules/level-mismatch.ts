import type { Hole } from '../../generated/layout.js';
import { heightsOfLevel, type LevelHeights } from '../level-heights.js';
import { type Kind, kindsOf } from '../kinds.js';
import { isOff } from '../places-on-faces.js';
import { levelByHeight } from '../level-by-height.js';
import type { Rule } from '../rule.js';
import type { Said, SiteRun } from '../run.js';
import type { Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { standInsIn } from '../stand-ins.js';

/** How far a hole may lie below its level or above the next one, unless a project says otherwise. */
const MARGIN_MM = 1500;

export const levelMismatch: Rule = {
  id: 'level-mismatch',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'A hole does not lie on the level that it names.',
  why: 'It is handed to the crew of another floor: they look for it in vain, and where it is needed nobody drills it.',
  mend: 'Name the level from which the hole is reached, at the hole and at its substrate; or correct its height.',
  accept: 'When the level has a higher room, a pit or a gallery that the levels do not show.',
  needs: 'A level of the hole, and one of its substrate or an elevation and a height.',
  options: {
    margin: {
      what: 'How far a hole may lie below its level or above the next one, for steps and pits: a definition of AHX.',
      unit: 'mm',
      default: MARGIN_MM,
      least: 0,
      most: 100_000,
    },
  },
  data: {
    level: 'id of the level that the hole names',
    other: 'id of the level of its substrate, or that its height looks like; absent where none does',
    substrate: 'id of the substrate; only where its level differs',
    height: 'height of the hole, mm; only where it does not fit the level',
    low: 'with a height: where the level begins, mm',
    high: 'with a height: where the level ends, mm; absent where it has no upper end',
  },
  message: ({ level, other, substrate, height, low, high }, say) => {
    if (substrate !== undefined)
      return `The hole names level "${level}", but its substrate "${substrate}" names level "${other}".`;
    const range =
      high === undefined ? `begins at ${say.length(low)}` : `reaches from ${say.length(low)} to ${say.length(high)}`;
    return `The hole lies at ${say.length(height)}, and its level "${level}" ${range}${like(other, level)}.`;
  },
  causeMessage: ({ level, other, substrate }) =>
    substrate === undefined
      ? `Holes lie above or below their level "${level}"${like(other, level)}.`
      : `Holes name level "${level}", but their substrates name level "${other}".`,
  example: {
    form: 'members',
    bad: '"levels": [\n  { "id": "L1", "name": "Level 1", "elevation": 0 },\n  { "id": "L2", "name": "Level 2", "elevation": 4000 }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "level": "L2", "point": [5000, 5000, 2499] }\n],\n"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "face": { "point": [0, 0, 2499], "inward": [0, 0, 1] } }\n]',
    good: '"levels": [\n  { "id": "L1", "name": "Level 1", "elevation": 0 },\n  { "id": "L2", "name": "Level 2", "elevation": 4000 }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "level": "L1", "point": [5000, 5000, 2499] }\n],\n"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "face": { "point": [0, 0, 2499], "inward": [0, 0, 1] }, "level": "L1" }\n]',
  },
  checkSite(site, run) {
    const { list, of } = kindsOf(site);
    const known = new Map<string, LevelHeights | undefined>();
    const verdicts = list.map((kind) => judge(site, kind, known, run));
    if (verdicts.every((verdict) => verdict === undefined)) return;
    const margin = run.option('margin') + LENGTH_SLACK_MM;
    for (let i = 0; i < site.holeCount; i++) {
      const verdict = verdicts[of[i]];
      if (verdict === undefined) continue;
      if ('data' in verdict) run.atHole(i, { member: 'level', ...verdict });
      else {
        const z = site.ownHeights[i];
        if (z >= verdict.low - margin && z <= verdict.high + margin) continue;
        if (isMeant(site, i)) run.atHole(i, ofHeight(verdict, z));
      }
    }
  },
  fix({ substrate, level, height }, { pointer: path, record, layout }) {
    if (substrate !== undefined || typeof height !== 'number' || layout === undefined) return undefined;
    const meant = levelByHeight(layout, record as Hole, height, MARGIN_MM);
    return meant === undefined || meant === level ? undefined : { patch: [{ op: 'replace', path, value: meant }] };
  },
};

/** Counts the holes of a kind; gives what is wrong with each, or the heights to which each is held. */
function judge(
  site: Site,
  { level, first, count, out, part, hasHeight }: Kind,
  known: Map<string, LevelHeights | undefined>,
  run: SiteRun,
): Said | LevelHeights | undefined {
  if (level < 0) return undefined;
  const substrate = out === undefined ? site.substrates.of(first) : undefined;
  const id = site.levels.id(level);
  // Another layout may give another list of levels.
  const key = `${part.input} ${level}`;
  if (!known.has(key)) known.set(key, heightsOfLevel(part, id));
  const heights = hasHeight ? known.get(key) : undefined;
  if (out !== undefined || (substrate?.level === undefined && heights === undefined)) {
    run.leftOut(out ?? 'neither a level of its substrate nor a height and an elevation', count);
    return undefined;
  }
  run.judged(count);
  const other = substrate?.level;
  if (other === undefined || other === id) return heights;
  return { data: { level: id, other, substrate: substrate?.id }, cause: JSON.stringify([id, other, 'substrate']) };
}

/** Whether no other rule says that the height is wrong, so that the level must be. */
function isMeant(site: Site, i: number): boolean {
  const face = site.surface(i);
  if (face === undefined) return !standInsIn(site).has(i);
  return !isOff(face, site.points.x[i], site.points.y[i], site.ownHeights[i]);
}

function ofHeight({ id, low, high, levelAt }: LevelHeights, z: number): Said {
  const other = levelAt(z);
  const data = {
    level: id,
    ...(other !== undefined && { other }),
    height: z,
    low,
    ...(Number.isFinite(high) && { high }),
  };
  return { member: 'level', data, cause: JSON.stringify([id, other, 'height']) };
}

function like(other: unknown, level: unknown): string {
  return other === undefined || other === level ? '' : `; the height looks like level "${other}"`;
}
