import { expect, test } from 'vitest';
import { formatFault } from '../../../src/content/format-fault.ts';
import { readVenue } from '../../../src/content/read-venue.ts';
import { FILE, replacing, smallVenue } from '../small-venue.ts';

const REAL = { [FILE.venue]: replacing('invented: true\n', '') };
const told = (today: string | undefined, changes = {}) => readVenue(smallVenue(changes), today).faults.map(formatFault);

test('warns of a guide whose day lies more than a day ahead', () => {
  expect(told('2026-11-19', REAL)).toMatchInlineSnapshot(`
    [
      "venue.md:4:12 warning Unexpected "2026-11-21" for guide-day, expected no day after today, 2026-11-19 by this computer's clock. Write the day of the newest data. Pages count their age from it: one that lies ahead hides how old they are. If the clock is wrong, set it. (guide-day-ahead)",
    ]
  `);
});

test('forgives the next day, an older guide, an invented venue and a machine without a clock', () => {
  expect(told('2026-11-20', REAL)).toEqual([]);
  expect(told('2027-02-01', REAL)).toEqual([]);
  expect(told('2020-01-01')).toEqual([]);
  expect(told(undefined, REAL)).toEqual([]);
});
