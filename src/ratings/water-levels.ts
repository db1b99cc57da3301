import type { Day } from '../domain/day.ts';
import type { FishingEvent } from '../domain/session.ts';
import type { LinearCombination } from './engine/latent-model.ts';
import { interval80 } from './interval.ts';
import { type RatingModel, TERM } from './rating-model.ts';
import type { WaterLevel } from './ratings.ts';
import type { ModelSession } from './sessions-in-model.ts';
import type { Question } from './worth.ts';

/**
 * Asks how each water fished in each stretch of the log beside its latest one: a stretch is a twelvemonth, parted at stockings and
 * nettings. A water whose level the model takes as the same on all days has none.
 */
export function levelQuestion(sessions: readonly ModelSession[], model: RatingModel): Question<WaterLevel> {
  const events = [...new Map(sessions.map(({ event }) => [event.id, event])).values()];
  const stretches = [...model.waterColumns.keys()].flatMap((water) => {
    const ofWater = events.filter((event) => event.water === water);
    const parts = [...Map.groupBy(ofWater, (event) => stretchOf(event, model)).values()].map(stretchFrom);
    return parts.length < 2 ? [] : parts.sort((a, b) => (a.from < b.from ? -1 : 1)).map((each) => ({ ...each, water }));
  });
  return {
    asked: stretches.map(({ first, water }) => ({ combination: besideNow(first, water, model), sessions: 0 })),
    read: (answers) =>
      stretches.map(({ water, from, until, events: count }, i) => {
        const { logWorth, sd } = answers[i]!;
        return { water, from, until, events: count, logLevel: logWorth, sd, ...interval80(logWorth, sd) };
      }),
  };
}

function stretchFrom(events: readonly FishingEvent[]) {
  const days = events.map(({ day }) => day).sort();
  return { first: events[0]!, from: days[0]!, until: days.at(-1)!, events: events.length };
}

/** What tells the stretches of a water apart. */
function stretchOf({ water, day }: FishingEvent, { asked, years, stockings }: RatingModel): string {
  const year = asked.waterYears === true && years.count > 1 ? years.positionOf(day) : 0;
  return `${year} ${stockings.filter((each) => each.water === water && each.on <= day).length}`;
}

/** The level on a day less the level now. */
function besideNow({ day }: { readonly day: Day }, water: string, model: RatingModel): LinearCombination {
  const { asked, years, stockings, waterColumns } = model;
  const first = waterColumns.get(water)! * years.count;
  const walk = asked.waterYears === true && years.count > 1 ? years.positionOf(day) : years.count - 1;
  return {
    effects: [
      ...(walk === years.count - 1
        ? []
        : [
            { term: TERM.waterYear, column: first + walk, weight: 1 },
            { term: TERM.waterYear, column: first + years.count - 1, weight: -1 },
          ]),
      ...stockings.flatMap((each, column) =>
        each.water === water && day < each.on ? [{ term: TERM.stocking, column, weight: -1 }] : [],
      ),
    ],
  };
}

/**
 * How much one event of each stretch says of now, beside one of the latest: the middle of n events scatters about their level with
 * sd² / n, and that level lies apart from now by so much, as far as the fit can tell, so that together they weigh
 * 1 / (sd² / n + apart²) (inverse-variance weights, the difference counted as an error). Without a drift all weigh the same.
 * @param eventSd Scatter of events about their level, on the log scale.
 */
export function stretchWeights(
  stretches: readonly { readonly events: number; readonly level: Pick<WaterLevel, 'logLevel' | 'sd'> | null }[],
  eventSd: number,
): number[] {
  const scatter = Math.max(eventSd, MIN_EVENT_SD) ** 2;
  return stretches.map(({ events, level }) => {
    const apart = level === null ? 0 : level.logLevel ** 2 + level.sd ** 2;
    return scatter / (scatter + events * apart);
  });
}

/** No log's days are more alike than this. */
const MIN_EVENT_SD = 0.05;
