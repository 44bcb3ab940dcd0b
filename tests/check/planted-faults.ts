import type { Json, RealisticHole, RealisticLayout } from './realistic-layout.js';
import { FOOT, INCH, mm, ROOF, SLAB, SOFFIT, THIN } from './realistic-structure.js';

/** A fault as people make it, and the rule that has to find it. */
export interface Fault {
  what: string;
  rule: string;
  /** Puts the fault into the layouts; the ids of the holes that the rule has to name, none where it is about a record. */
  plant(layouts: readonly RealisticLayout[]): string[];
}

type Wanted = (hole: RealisticHole) => boolean;

const holesOf = (layouts: readonly RealisticLayout[]) => layouts.flatMap(({ holes }) => holes);
const recordsOf = (layouts: readonly RealisticLayout[], name: string) =>
  layouts.flatMap((layout) => layout[name] as (Json & { id: string })[]);

function first(layouts: readonly RealisticLayout[], isWanted: Wanted): RealisticHole {
  const found = holesOf(layouts).find(isWanted);
  if (found === undefined) throw new Error('the layout has no such hole');
  return found;
}

const isOf =
  (holeType: string, substrate: string): Wanted =>
  (hole) =>
    hole.holeType === holeType && hole.substrate === substrate;
const isNear =
  (wanted: Wanted, x: number, y: number): Wanted =>
  (hole) =>
    wanted(hole) && Math.abs(hole.point[0] - mm(x * FOOT)) < 1500 && Math.abs(hole.point[1] - mm(y * FOOT)) < 1500;
const inThin: Wanted = ({ point: [x, y] }) =>
  x > mm(THIN[0][0]) && x < mm(THIN[2][0]) && y > mm(THIN[0][1]) && y < mm(THIN[2][1]);

/** Moves all members of the group of a hole, so that its pattern stays. */
function moveGroup(layouts: readonly RealisticLayout[], { group }: RealisticHole, dx: number, dy: number): string[] {
  const members = holesOf(layouts).filter((hole) => hole.group === group);
  for (const { point } of members) {
    point[0] += dx;
    point[1] += dy;
  }
  return members.map(({ id }) => id);
}

/** What reaches the office in the course of a job: each a mistake of another kind. */
export const FAULTS = {
  heights: {
    what: 'a trade has taken the top of the roof for its underside',
    rule: 'off-surface',
    plant: (layouts) => {
      const wrong = holesOf(layouts).filter((hole) => hole.trade === 'FP' && hole.level === 'L2');
      for (const { point } of wrong) point[2] += mm(ROOF);
      return wrong.map(({ id }) => id);
    },
  },
  measured: {
    what: 'a trade has measured to the top of the slab, and levelled from there',
    rule: 'off-surface',
    plant: (layouts) => {
      const wrong = holesOf(layouts).filter((hole) => hole.trade === 'EL' && String(hole.substrate).startsWith('S1'));
      for (const { point } of wrong) point[2] += mm(SLAB);
      return wrong.map(({ id }) => id);
    },
  },
  tendon: {
    what: 'a trapeze of the duct firm has slid onto a tendon',
    rule: 'crosses-keep-out',
    plant: (layouts) => {
      // Tendons lie each 6 ft from the corner of a pour, and low in the middle between columns.
      const wrong = first(layouts, isNear(isOf('du-38', 'S1-SW'), 28, 69));
      const tendon = Math.round(wrong.point[0] / mm(6 * FOOT)) * mm(6 * FOOT);
      return moveGroup(layouts, wrong, tendon - wrong.point[0], mm(80 * FOOT) - wrong.point[1]);
    },
  },
  owner: {
    what: 'two trades have drawn an anchor at one place',
    rule: 'holes-coincide',
    plant: (layouts) => {
      const wrong = first(layouts, isNear(isOf('fp-38', 'D2-E'), 250, 105));
      const other = first(layouts, isNear(isOf('el-14', 'D2-E'), 246, 122));
      other.point = [...wrong.point];
      return [other.id];
    },
  },
  edge: {
    what: 'a hanger lies beyond the edge of the slab',
    rule: 'outside-substrate',
    plant: (layouts) => {
      const wrong = first(layouts, isNear(isOf('fp-38', 'S1-SE'), 231, 5));
      wrong.point[1] = -mm(4 * INCH);
      return [wrong.id];
    },
  },
  deep: {
    what: 'a brace anchor is used where the slab is thin',
    rule: 'breaks-through',
    plant: (layouts) => {
      const wrong = first(layouts, (hole) => hole.holeType === 'fp-38' && inThin(hole));
      wrong.holeType = 'fp-brace';
      return [wrong.id];
    },
  },
  near: {
    what: 'a hanger stands too near to the edge of a shaft',
    rule: 'edge-too-close',
    plant: (layouts) => {
      const wrong = first(layouts, isNear(isOf('fp-38', 'S1-NW'), 69, 175));
      wrong.point[0] = mm(70 * FOOT - 2 * INCH);
      return [wrong.id];
    },
  },
  levels: {
    what: 'a hole of the upper level names the lower one',
    rule: 'level-mismatch',
    plant: (layouts) => {
      const wrong = first(layouts, isNear(isOf('fp-38', 'D2-W'), 99, 105));
      wrong.level = 'L1';
      wrong.area = 'A-S1-SW';
      wrong.tag = 'FP-X';
      return [wrong.id];
    },
  },
  flute: {
    what: 'a rack has slid off the middle of the flutes',
    rule: 'flute-offset',
    plant: (layouts) => moveGroup(layouts, first(layouts, isNear(isOf('el-38', 'D2-E'), 247, 116)), mm(1.5 * INCH), 0),
  },
  copy: {
    what: 'two holes of one trade have one tag',
    rule: 'tag-clash',
    plant: (layouts) => {
      const [one, other] = holesOf(layouts).filter(isOf('el-14', 'S1-SE'));
      other.tag = one.tag;
      return [other.id];
    },
  },
  depth: {
    what: 'a hole type has lost its depth',
    rule: 'depth-missing',
    plant: (layouts) => {
      const wrong = recordsOf(layouts, 'holeTypes').find(({ id }) => id === 'du-plate');
      if (wrong !== undefined) for (const name of ['depth', 'depthTolerance', 'embedment']) delete wrong[name];
      return holesOf(layouts).flatMap(({ id, holeType }) => (holeType === 'du-plate' ? [id] : []));
    },
  },
  bore: {
    what: 'a strap has slid next to an old bore',
    rule: 'near-existing-bore',
    plant: (layouts) => {
      const wrong = first(layouts, isNear(isOf('fp-38', 'S1-SW'), 21, 15));
      wrong.point = [mm(20 * FOOT + 2 * INCH), mm(14 * FOOT), mm(SOFFIT.L1)];
      return [wrong.id];
    },
  },
  symbol: {
    what: 'two trades spray the same mark',
    rule: 'symbol-clash',
    plant: (layouts) => {
      for (const trade of recordsOf(layouts, 'trades'))
        if (trade.id === 'EL') trade.symbol = { text: 'DU', colour: 'blue' };
      return [];
    },
  },
  control: {
    what: 'the control of one firm is less sure than its holes must be',
    rule: 'tolerance-finer-than-control',
    plant: (layouts) => {
      for (const point of recordsOf(layouts.slice(0, 1), 'control')) if (point.id === 'CP-12') point.sigmaPlan = 6;
      return [];
    },
  },
} satisfies Record<string, Fault>;
