import { countWords } from '../domain/count-words.ts';
import { hasDays } from '../domain/dated.ts';
import { formatDay } from '../domain/day.ts';
import { pegKey } from '../domain/peg.ts';
import type { Atlas } from './atlas.ts';

/** What changed at the venue within its log, a sentence each, with how the ratings take it. Empty where nothing did. */
export function venueChanges({ venue, sessionsByPeg }: Atlas): readonly string[] {
  const { settings, waters, pegs, retired = [] } = venue;
  const renumbered = pegs.filter(({ was = [] }) => was.length > 0);
  const painted = venue.sessions.filter((session) => session.painted !== undefined).length;
  const gone = retired.reduce((sum, { water, peg }) => sum + (sessionsByPeg.get(pegKey(water, peg)) ?? []).length, 0);
  const moved = pegs.filter(({ moved: moves = [] }) => moves.some(({ newGround }) => newGround));
  const dated = pegs.filter(({ datedFeatures = [] }) => datedFeatures.some(hasDays));
  return [
    ...(renumbered.length === 0
      ? []
      : [
          `${countWords(renumbered.length, 'post')} carried another number before. ${countWords(painted, 'session')} logged under a number of their day are put to the stand that carried it.`,
        ]),
    ...(retired.length === 0
      ? []
      : [
          `${countWords(retired.length, 'stand')} ${retired.length === 1 ? 'is' : 'are'} not fished any more. What was logged there, ${countWords(gone, 'session')}, still tells of features and anglers.`,
        ]),
    ...(moved.length === 0
      ? []
      : [
          `${countWords(moved.length, 'platform')} ${moved.length === 1 ? 'was' : 'were'} set before other water; bags from before are rated as those of another place.`,
        ]),
    ...(dated.length === 0
      ? []
      : [`Features of ${countWords(dated.length, 'peg')} have days: each counts on the days it was there.`]),
    ...settings.bagParts.flatMap(({ name, since }) =>
      since === undefined
        ? []
        : [
            `${name}: weighed apart since ${formatDay(since)}. Bags from before say nothing of them, not that there were none.`,
          ],
    ),
    ...waters.flatMap(({ name, stocked = [], netted = [] }) => [
      ...stocked.map(
        ({ on, what }) => `${name} was stocked on ${formatDay(on)} (${what}): its days may be better from then on.`,
      ),
      ...netted.map(
        ({ on, what }) => `${name} was netted on ${formatDay(on)} (${what}): its days may be poorer from then on.`,
      ),
    ]),
  ];
}
