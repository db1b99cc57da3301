import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts a hazard checked after it was found by a round that exists', () => {
  expect(
    messagesOf({ [FILE.peg]: replacing('found-on: 2026-03-01', 'found-on: 2026-03-01\n    round: k7q2') }),
  ).toEqual([]);
});

test('refuses a check before the finding, and a round that is not there', () => {
  expect(
    messagesOf({
      [FILE.peg]: replacing(
        'found-on: 2026-03-01\n    checked-on: 2026-11-01',
        'found-on: 2026-03-01\n    checked-on: 2026-02-01\n    round: k7q3',
      ),
    }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:14:17 error Unexpected "2026-02-01" for hazards[0].checked-on, expected no day before 2026-03-01, when the hazard was found. Correct one of the two days. (hazard-days)",
      "pegs/mill-pond/1.md:15:12 error Unexpected "k7q3" for hazards[0].round, expected the reference of a file in rounds/. Did you mean k7q2? (round-unknown)",
    ]
  `);
});
