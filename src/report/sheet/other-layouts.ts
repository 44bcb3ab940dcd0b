import type { Bore, Hole, KeepOut, Layout } from '../../generated/layout.js';

/** A hole of another trade, to be drawn without a number. Millimetres, site frame. */
export interface OtherHole {
  readonly x: number;
  readonly y: number;
  /** Undefined where the height is not known. */
  readonly z: number | undefined;
  /** Name of the trade. */
  readonly trade: string;
}

/** What layouts other than the one of the sheets bring onto them. */
export interface OtherLayouts {
  readonly keepOuts: readonly KeepOut[];
  readonly bores: readonly Bore[];
  readonly holes: readonly OtherHole[];
}

export const NO_OTHERS: OtherLayouts = { keepOuts: [], bores: [], holes: [] };

/** A layout beside that of the sheets. */
interface Beside {
  readonly header: Omit<Layout, 'holes'>;
  holes(): Iterable<Hole>;
}

/**
 * What other layouts have near holes. A keep-out or bore that the own layout has with the same values is not there
 * twice.
 *
 * @param own layout of the sheets
 * @param holes plan points of their holes, mm
 * @param reachMm how far around them
 */
export function otherLayouts(
  own: Omit<Layout, 'holes'>,
  others: readonly Beside[],
  holes: readonly (readonly [number, number, ...number[]])[],
  reachMm: number,
): OtherLayouts {
  const [low, high] = [Math.min, Math.max].map((pick, k) => {
    const far = k === 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
    const reach = k === 0 ? -reachMm : reachMm;
    const of = (axis: 0 | 1) => holes.reduce((found, point) => pick(found, point[axis]), far) + reach;
    return [of(0), of(1)];
  });
  const isNear = ({ point: [x, y] }: Hole) => x >= low[0] && x <= high[0] && y >= low[1] && y <= high[1];
  const names = new Map(others.flatMap(({ header }) => header.trades.map(({ id, name }) => [id, name] as const)));
  return {
    keepOuts: unlike(
      own.keepOuts ?? [],
      others.flatMap(({ header }) => header.keepOuts ?? []),
    ),
    bores: unlike(
      own.bores ?? [],
      others.flatMap(({ header }) => header.bores ?? []),
    ),
    holes: others.flatMap((other) =>
      [...holesThat(other, isNear)].map(({ point: [x, y, z], trade }) => ({
        x,
        y,
        z,
        trade: names.get(trade) ?? trade,
      })),
    ),
  };
}

function* holesThat(layout: Beside, isWanted: (hole: Hole) => boolean): Generator<Hole> {
  for (const hole of layout.holes()) if (isWanted(hole)) yield hole;
}

/** Those of the others that are not in the own list, each once. */
function unlike<T extends { substrate?: string }>(own: readonly T[], others: readonly T[]): T[] {
  const known = new Set(own.map((one) => JSON.stringify(one)));
  return others.filter((one) => {
    const text = JSON.stringify(one);
    if (known.has(text)) return false;
    known.add(text);
    return true;
  });
}

/** Number of holes by the name of their trade. */
export function tradesOf(holes: readonly OtherHole[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { trade } of holes) counts.set(trade, (counts.get(trade) ?? 0) + 1);
  return counts;
}
