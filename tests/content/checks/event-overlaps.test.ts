import { expect, test } from 'vitest';
import { FILE, messagesOf } from '../small-venue.ts';

test('warns of two matches of a day that used the same pegs', () => {
  expect(
    messagesOf({
      [FILE.events]: (text) => `${text}second,2026-05-02,mill-pond,match,5,full,1,,,,\n`,
      [FILE.sessions]: (text) => `${text}second,B,1,,dnw,,,,,\n`,
    }),
  ).toMatchInlineSnapshot(`
    [
      "sessions/2026/events.csv:3:1 warning Unexpected second match on mill-pond on 2026-05-02 that used the peg 1, expected one match on a peg and day; the other is 2026-05-02-mill-pond. If it is the same match logged twice, delete one of the two; if both were fished, leave them. (event-overlap)",
    ]
  `);
});

test('accepts two matches of a day on pegs of their own', () => {
  expect(
    messagesOf({
      [FILE.events]: (text) => `${text}second,2026-05-02,mill-pond,match,5,full,1,,,,\n`,
      [FILE.sessions]: (text) => text.replace('2026-05-02-mill-pond,A,10', 'second,B,10'),
    }),
  ).toEqual([]);
});
