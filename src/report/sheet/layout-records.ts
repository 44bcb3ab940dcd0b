import type {
  Area,
  Building,
  Group,
  HoleType,
  Layout,
  Level,
  Package,
  Party,
  Source,
  Substrate,
  Trade,
} from '../../generated/layout.js';
import { printable } from '../../model/printable.js';

/** The records of a sound layout by their ids. */
export interface LayoutRecords {
  readonly header: Omit<Layout, 'holes'>;
  readonly areas: ReadonlyMap<string, Area>;
  readonly buildings: ReadonlyMap<string, Building>;
  readonly groups: ReadonlyMap<string, Group>;
  readonly holeTypes: ReadonlyMap<string, HoleType>;
  readonly levels: ReadonlyMap<string, Level>;
  readonly packages: ReadonlyMap<string, Package>;
  readonly parties: ReadonlyMap<string, Party>;
  readonly sources: ReadonlyMap<string, Source>;
  readonly substrates: ReadonlyMap<string, Substrate>;
  readonly trades: ReadonlyMap<string, Trade>;
}

export function layoutRecords(header: Omit<Layout, 'holes'>): LayoutRecords {
  return {
    header,
    areas: byId(header.areas),
    buildings: byId(header.buildings),
    groups: byId(header.groups),
    holeTypes: byId(header.holeTypes),
    levels: byId(header.levels),
    packages: byId(header.packages),
    parties: byId(header.parties),
    sources: byId(header.sources),
    substrates: byId(header.substrates),
    trades: byId(header.trades),
  };
}

function byId<T extends { id: string }>(records: readonly T[] | undefined): Map<string, T> {
  return new Map(records?.map((record) => [record.id, record]));
}

/** A party as people name it, printable: the person and the firm; its id where it is not in the layout. */
export function partyInWords({ parties }: LayoutRecords, id: string): string {
  const party = parties.get(id);
  if (party === undefined) return printable(id);
  return printable(party.person === undefined ? party.firm : `${party.person}, ${party.firm}`);
}
