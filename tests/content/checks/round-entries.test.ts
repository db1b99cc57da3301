import { expect, test } from 'vitest';
import { FILE, messagesOf } from '../small-venue.ts';

test('refuses rows on pegs that are not there and rows that lack what their kind needs', () => {
  expect(
    messagesOf({
      [FILE.round]: (text) =>
        `${text}visit,mill-pond,11,,,,,,,\nvisit,mill-pnd,1,,,,,,,\nhazard-found,mill-pond,1,,trip,,2,,,\ngauge,mill-pond,,,,,,,,\n`,
    }),
  ).toMatchInlineSnapshot(`
    [
      "rounds/2026-11-12-k7q2.csv:5:17 error Unexpected "11" for peg, expected one of the 3 pegs of mill-pond. Did you mean 1? (peg-unknown)",
      "rounds/2026-11-12-k7q2.csv:6:7 error Unexpected "mill-pnd" for water, expected one of mill-pond. Did you mean mill-pond? (water-unknown)",
      "rounds/2026-11-12-k7q2.csv:7:32 error Found nothing for place, expected place in a row of hazard-found. Fill the cell in. (round-row)",
      "rounds/2026-11-12-k7q2.csv:7:35 error Found nothing for likelihood, expected likelihood in a row of hazard-found. Fill the cell in. (round-row)",
      "rounds/2026-11-12-k7q2.csv:8:23 error Found nothing for level, expected level or water_temperature in a row of gauge. Fill the cell in. (round-row)",
    ]
  `);
});

test('refuses a copy of a round', () => {
  expect(
    messagesOf({ 'rounds/2026-11-13-k7q2.csv': () => 'entry,water,peg\nvisit,mill-pond,1\n' }),
  ).toMatchInlineSnapshot(`
    [
      "rounds/2026-11-13-k7q2.csv:1:1 error Unexpected reference k7q2 a second time, expected a reference of its own; the first is rounds/2026-11-12-k7q2.csv. Delete the file if it is a copy, or rename it. (round-duplicate)",
    ]
  `);
});
