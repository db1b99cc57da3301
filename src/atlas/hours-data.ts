import * as z from 'zod';
import { MONTHS } from '../domain/day.ts';
import { INTERVAL_WORDS } from '../domain/interval-level.ts';
import type { Venue } from '../domain/venue.ts';
import { hoursByMonth } from './fish-hours.ts';

const share = (about: string) => z.number().min(0).max(1).describe(about);

/** `data/hours.json`: when the fish came on each water, by hour of the match. */
export const HoursDataSchema = z.strictObject({
  format: z.literal(1).describe('the number of what these keys mean'),
  waters: z.array(
    z.strictObject({
      water: z.string(),
      months: z
        .array(
          z.strictObject({
            month: z.literal(MONTHS).describe('of the year; matches of the month before and after count with it'),
            bags: z.int().positive().describe('bags of which somebody noted when they came'),
            matches: z.int().positive(),
            match_hours: z
              .number()
              .positive()
              .describe('how long each match was; where it is no whole number, the last hour is a part of one'),
            thin: z.boolean().describe('so few matches that they may mislead'),
            hours: z.array(
              z.strictObject({
                hour: z.int().positive().describe('of the match, the first after the all in being 1'),
                share: share('of a bag, each bag counting alike; those of all hours add up to 1'),
                low80: share(`${INTERVAL_WORDS} interval of the mean`)
                  .nullable()
                  .describe('null where too few matches tell one'),
                high80: share(`${INTERVAL_WORDS} interval of the mean`)
                  .nullable()
                  .describe('null where too few matches tell one'),
              }),
            ),
          }),
        )
        .describe('months without a logged bag are left out'),
    }),
  ),
});

type HoursData = z.infer<typeof HoursDataSchema>;

/** When the fish came on each water, as data: nothing of one angler or one peg. */
export function hoursData(venue: Venue): HoursData {
  return {
    format: 1,
    waters: venue.waters.map(({ id }) => ({
      water: id,
      months: hoursByMonth(venue, id).map(({ month, bags, matches, matchHours, isThin, shares }) => ({
        month,
        bags,
        matches,
        match_hours: matchHours,
        thin: isThin,
        hours: shares.map(({ share: of, interval }, index) => ({
          hour: index + 1,
          share: rounded(of),
          low80: interval === null ? null : rounded(interval[0]),
          high80: interval === null ? null : rounded(interval[1]),
        })),
      })),
    })),
  };
}

/** The JSON Schema of it (draft 2020-12). */
export function hoursDataSchema(): object {
  return z.toJSONSchema(HoursDataSchema);
}

/** To a ten-thousandth: more would say more than the log knows. */
function rounded(of: number): number {
  return Math.round(of * 10_000) / 10_000;
}
