import { MONTHS } from '../domain/day.ts';
import { nameOf } from '../domain/name-of.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import type { BagId, PegMonth } from '../ratings/ratings.ts';
import type { Atlas } from './atlas.ts';
import { type WorthWords, worthWords } from './worth-words.ts';

/** What pegs are worth of one bag: "total", or a part that the log rates. */
export interface BagWorths {
  readonly bag: BagId;
  /** "total bag", "silvers". */
  readonly name: string;
  /** January first; null where the log rates nothing. */
  readonly of: (peg: Peg) => readonly (WorthWords | null)[];
}

/** The worth of any peg by month, for the total bag and then for each part that the log rates. */
export function bagWorths(atlas: Atlas): readonly BagWorths[] {
  return atlas.ratings.bags.map(({ bag, pegMonths }) => {
    const byPeg = Map.groupBy(pegMonths, ({ water, peg }) => pegKey(water, peg));
    return {
      bag,
      name: bagName(atlas, bag),
      of: ({ water, peg }) => {
        const rated = byPeg.get(pegKey(water, peg)) ?? [];
        return MONTHS.map((month) => wordsOf(rated.find((each) => each.month === month)));
      },
    };
  });
}

function bagName({ venue }: Atlas, bag: BagId): string {
  if (bag === 'total') return 'total bag';
  return nameOf(venue.settings.bagParts, bag).toLowerCase();
}

function wordsOf(rated: PegMonth | undefined): WorthWords | null {
  if (rated === undefined) return null;
  const { worth: value, low80: low, high80: high, evidence, sessions } = rated;
  return worthWords({ value, low, high, evidence }, sessions);
}
