import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { HourWeight } from '../../domain/hour-weight.ts';
import { PEG_NAME } from './dated-schemas.ts';
import { eventId } from './event-schema.ts';
import { matching, wholeNumber } from './fields.ts';
import { weight } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** The id that a phone gave a slip: of one day on one peg, never of a person or a phone. */
export const slipId = () =>
  matching(
    /^[a-z0-9]{6,20}$/,
    'slip-id',
    'the id of a slip: 6 to 20 small letters and digits, or nothing',
    'Write it as the slip gave it, or leave it empty.',
  );

/** A row of `sessions/<year>/hours.csv`. */
export const hoursRowSchema = (units: Units) =>
  z
    .object({
      event: eventId(),
      peg: matching(PEG_NAME, 'peg-name', "the peg's name", 'Write it as painted on the post: 23 or 14a.'),
      slip: slipId().exactOptional(),
      hour: wholeNumber('the hour of the match, the first after the all in being 1', 1, 72),
      part: matching(
        /^[a-z][a-z0-9]*$/,
        'part-name',
        'a part of the bag, or total',
        'Write an id of bag-parts in venue.md, or total for the whole bag.',
      ),
      weight: weight(units, 'what was caught in that hour'),
    })
    .transform(({ weight: weightGrams, ...row }) =>
      withoutUndefined({ ...row, weightGrams }),
    ) satisfies z.ZodType<HourWeight>;
