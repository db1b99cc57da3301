import type { Day } from '../domain/day.ts';
import { goneNumbers } from '../domain/gone-numbers.ts';
import { standId } from '../domain/stand.ts';
import type { Atlas } from './atlas.ts';

/** One entry of `data/gone.json`: a number that is on no post any more. */
export interface GoneDatum {
  readonly water: string;
  readonly peg: string;
  /** The first day without it. */
  readonly since: Day;
  readonly stand: string;
  /** The number its stand carries today; null where that is retired. */
  readonly now: string | null;
  readonly retired: { readonly from: Day; readonly why: string | null } | null;
}

/** Every number that is on no post any more, as plain data. */
export function goneData({ venue }: Atlas): readonly GoneDatum[] {
  return goneNumbers(venue.pegs, venue.retired).map(({ water, number, since, stand }) => ({
    water,
    peg: number,
    since,
    stand: standId(stand),
    now: stand.retired === undefined ? stand.peg : null,
    retired: stand.retired === undefined ? null : { from: stand.retired.from, why: stand.retired.why ?? null },
  }));
}
