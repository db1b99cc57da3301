import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import type { BagModel } from './bag-model.ts';
import type { LinearCombination } from './engine/latent-model.ts';
import { factorRows } from './engine/sparse-rows.ts';
import { fitRatings } from './fit-ratings.ts';
import type { RatedVenue } from './rated-venue.ts';
import { LEVEL, TERM } from './rating-model.ts';
import { returnCombinations } from './return-combinations.ts';

/** What par weighs on a day yet to come, on the log scale (natural log of kilograms). */
export interface DayLevel {
  readonly mean: number;
  /** Doubt about the water's month and the luck of the day together. */
  readonly sd: number;
}

const WATER = 'water';
const MONTH = 'month';
const WATER_MONTH = 'waterMonth';

/**
 * Par by water and month for a day yet to come. The ratings' model tells only how good each past day was; here those
 * days' pars are smoothed by a model of their own: a level, the water, the month (a cyclic walk), the water's own months
 * (the same), and the luck of the day. A month never fished is drawn from its neighbours and is wide. Null where no
 * session counts.
 */
export function dayLevels(venue: RatedVenue, bag: BagModel): ((water: string, month: Month) => DayLevel) | null {
  const events = [...new Map(bag.sessions.map(({ event }) => [event.id, event])).values()];
  if (events.length === 0) return null;
  const pars = parOfEvents(venue, bag, events);
  const waters = new Map(venue.waters.map(({ id }, i) => [id, i]));
  const placeOf = (water: string, month: Month) => waters.get(water)! * MONTHS.length + month - 1;
  const walk = { kind: 'cyclic-walk', positions: MONTHS.length } as const;
  const fit = fitRatings({
    observations: { lower: pars, upper: pars },
    fixed: [{ name: LEVEL, values: new Float64Array(events.length).fill(1) }],
    terms: [
      {
        name: WATER,
        columns: waters.size,
        rows: factorRows(events.map(({ water }) => waters.get(water)!)),
        prior: { kind: 'independent' },
      },
      { name: MONTH, columns: MONTHS.length, rows: factorRows(events.map(({ day }) => monthOf(day) - 1)), prior: walk },
      {
        name: WATER_MONTH,
        columns: waters.size * MONTHS.length,
        rows: factorRows(events.map(({ water, day }) => placeOf(water, monthOf(day)))),
        prior: walk,
      },
    ],
  });
  const places = venue.waters.flatMap(({ id }) => MONTHS.map((month) => ({ water: id, month })));
  const { mean, sd } = fit.posterior(
    places.map(
      ({ water, month }): LinearCombination => ({
        fixed: [{ name: LEVEL, weight: 1 }],
        effects: [
          { term: WATER, column: waters.get(water)!, weight: 1 },
          { term: MONTH, column: month - 1, weight: 1 },
          { term: WATER_MONTH, column: placeOf(water, month), weight: 1 },
        ],
      }),
    ),
  );
  return (water, month) => {
    const place = placeOf(water, month);
    return { mean: mean[place]!, sd: Math.hypot(sd[place]!, fit.residualSd) };
  };
}

/** Log weight of par on each event's day: the level, the event, and the mean over its water's pegs. */
function parOfEvents(
  venue: RatedVenue,
  { model, fit }: BagModel,
  events: readonly BagModel['sessions'][number]['event'][],
) {
  const { meanOf } = returnCombinations(venue, model);
  return fit.posterior(
    events.map((event): LinearCombination => {
      const mean = meanOf(event.water, model.season.positionOf(event));
      return {
        fixed: [{ name: LEVEL, weight: 1 }],
        effects: [...mean.effects, { term: TERM.event, column: model.eventColumns.get(event.id)!, weight: 1 }],
      };
    }),
  ).mean;
}
