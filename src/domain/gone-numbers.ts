import { addDays, type Day } from './day.ts';
import type { Bearer } from './number-book.ts';
import { type Peg, pegKey } from './peg.ts';
import { numbersOf } from './stand.ts';

/** A number that was on a post once and is on none today. */
export interface GoneNumber {
  readonly water: string;
  readonly number: string;
  /** The first day without it. */
  readonly since: Day;
  /** The stand that carried it last. */
  readonly stand: Peg;
}

/**
 * Numbers that some stand carried and none carries today, in the order of the stands given. Somebody with an old sheet, an
 * old guide or an old board asks for them: they are told where the stand went, and never find a peg to fish.
 */
export function goneNumbers(pegs: readonly Peg[], retired: readonly Peg[] = []): readonly GoneNumber[] {
  const today = new Set(pegs.map(({ water, peg }) => pegKey(water, peg)));
  const gone = new Map<string, GoneNumber>();
  for (const stand of [...pegs, ...retired]) {
    for (const { peg: number, until } of numbersOf(stand)) {
      const key = pegKey(stand.water, number);
      if (until === undefined || today.has(key)) continue;
      const since = addDays(until, 1);
      const other = gone.get(key);
      if (other === undefined || other.since < since) gone.set(key, { water: stand.water, number, since, stand });
    }
  }
  return [...gone.values()];
}

/** Stands other than this one that carried its number of today before, oldest first. */
export function earlierBearers(peg: Peg, stands: readonly Peg[]): readonly Bearer[] {
  return stands
    .filter((stand) => stand !== peg && stand.water === peg.water)
    .flatMap((stand) => numbersOf(stand).map((spell) => ({ stand, spell })))
    .filter(({ spell }) => spell.peg === peg.peg && spell.until !== undefined)
    .sort((a, b) => ((a.spell.until ?? '') < (b.spell.until ?? '') ? -1 : 1));
}
