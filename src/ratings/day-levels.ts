import { MONTHS, type Month } from '../domain/day.ts';
import type { LinearCombination } from './engine/latent-model.ts';
import type { RatedVenue } from './rated-venue.ts';
import { LEVEL, type RatingModel, TERM, venueWaveAt } from './rating-model.ts';
import type { ModelSession } from './sessions-in-model.ts';
import type { Question } from './worth.ts';
import { worthCombinations } from './worth-combinations.ts';

/** What par weighs on a day yet to come, on the log scale (natural log of kilograms). */
export interface DayLevel {
  readonly water: string;
  readonly month: Month;
  readonly mean: number;
  /** Doubt about it, the luck of the day left out. */
  readonly sd: number;
}

/** The water's level in the last year of the log, which is what a day yet to come begins from. */
function yearNow(water: number, { asked, years }: RatingModel): LinearCombination['effects'] {
  if (asked.waterYears !== true || years.count < 2) return [];
  return [{ term: TERM.waterYear, column: water * years.count + years.count - 1, weight: 1 }];
}

/**
 * Asks for par of every water in every month on a day yet to come: the level, the water, its month, its present year and the
 * mean over its pegs. Empty where nobody weighed a bag.
 */
export function dayQuestion(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  model: RatingModel,
): Question<DayLevel> {
  if (sessions.every(({ isCensored }) => isCensored)) return { asked: [], read: () => [] };
  const { meanOf } = worthCombinations(venue, model);
  const places = venue.waters.flatMap(({ id }) => MONTHS.map((month) => ({ water: id, month })));
  const parOf = (water: string, month: Month): LinearCombination => {
    const column = model.waterColumns.get(water)!;
    return {
      fixed: [{ name: LEVEL, weight: 1 }],
      effects: [
        ...(model.waterColumns.size > 1 ? [{ term: TERM.water, column, weight: 1 }] : []),
        ...yearNow(column, model),
        ...model.stockings.flatMap((stocking, k) =>
          stocking.water === water ? [{ term: TERM.stocking, column: k, weight: 1 }] : [],
        ),
        { term: TERM.waterSeason, column: column * model.season.positions + month - 1, weight: 1 },
        ...venueWaveAt(model.season, month - 1),
        ...meanOf(water, month - 1).effects,
      ],
    };
  };
  return {
    asked: places.map(({ water, month }) => ({ combination: parOf(water, month), sessions: 0 })),
    read: (answers) => places.map((place, i) => ({ ...place, mean: answers[i]!.logWorth, sd: answers[i]!.sd })),
  };
}
