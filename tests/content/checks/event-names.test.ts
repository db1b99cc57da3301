import { expect, test } from 'vitest';
import { FILE, messagesOf } from '../small-venue.ts';

test('accepts an event with a name of its own on a water that exists', () => {
  expect(messagesOf({})).toEqual([]);
});

test('refuses a second event of the same name, an unknown water and a day of another year', () => {
  expect(
    messagesOf({ [FILE.events]: (text) => `${text}2026-05-02-mill-pond,2025-05-02,mil-pond,match,5,full,1,,,,\n` }),
  ).toMatchInlineSnapshot(`
    [
      "sessions/2026/events.csv:3:1 error Unexpected event "2026-05-02-mill-pond" a second time, expected each event once; the first is in sessions/2026/events.csv, line 2. Delete one of the two rows, or give this one its own name. (event-duplicate)",
      "sessions/2026/events.csv:3:22 error Unexpected "2025-05-02" for date, expected a day of 2026, the year of the folder. Correct the date, or move the row to the folder of its year. (event-year)",
      "sessions/2026/events.csv:3:33 error Unexpected "mil-pond" for water, expected one of mill-pond. Did you mean mill-pond? (water-unknown)",
    ]
  `);
});
