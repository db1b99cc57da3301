import { addDays } from '../../../src/domain/day.ts';
import type { HourWeight } from '../../../src/domain/hour-weight.ts';
import type { Venue } from '../../../src/domain/venue.ts';
import type { Chance } from '../chance.ts';
import { GRAMS_PER_OUNCE } from './bag-parts.ts';

/** The water whose anglers hand in slips, and since when. */
const WATER = 'kiln-pool';
const DAYS = 730;
/** Of the weighed bags of a match, how many are noted by the hour. */
const NOTED_SHARE = 0.12;
/** Fish of a cold day come late, those of a warm one early and late; invented. */
const COLD = [0.08, 0.12, 0.2, 0.28, 0.32];
const WARM = [0.24, 0.16, 0.14, 0.18, 0.28];
const COLD_BELOW_DEGREES = 10;

/** What some anglers of the demo noted of when the fish came. */
export function noteHours(venue: Venue, chance: Chance): readonly HourWeight[] {
  const from = addDays(venue.settings.guideDay, -DAYS);
  return venue.events
    .filter(({ kind, water, day }) => kind === 'match' && water === WATER && day >= from)
    .flatMap((event) => {
      const ofDay = (event.conditions.waterDegreesC ?? COLD_BELOW_DEGREES) < COLD_BELOW_DEGREES ? COLD : WARM;
      const leaning = ofDay.map((share) => share * Math.exp(0.3 * chance.normal()));
      return venue.sessions
        .filter((session) => session.event === event.id && session.status === 'weighed')
        .filter(() => chance.happens(NOTED_SHARE))
        .flatMap(({ peg, painted, weightGrams = 0 }) => {
          const shares = leaning
            .slice(0, Math.ceil(event.hours))
            .map((share) => share * Math.exp(0.4 * chance.normal()));
          const guessed = weightGrams * Math.exp(0.12 * chance.normal());
          const total = shares.reduce((sum, share) => sum + share, 0);
          return shares.flatMap((share, index): readonly HourWeight[] => {
            const ounces = Math.round((guessed * share) / total / GRAMS_PER_OUNCE);
            if (ounces === 0) return [];
            const weightGramsOfHour = ounces * GRAMS_PER_OUNCE;
            return [
              { event: event.id, peg: painted ?? peg, hour: index + 1, part: 'total', weightGrams: weightGramsOfHour },
            ];
          });
        });
    });
}
