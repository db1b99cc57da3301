import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('refuses a peg fished twice in a match', () => {
  expect(messagesOf({ [FILE.sessions]: replacing('A,10,', 'A,2,') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:4:24 error Unexpected peg "2" a second time in 2026-05-02-mill-pond, expected one row for each; the first is in sessions/2026/sessions.csv, line 3. Delete one of the two rows, or correct the peg. (session-duplicate)",
    ]
  `);
});

test('refuses an angler fishing twice in a match', () => {
  expect(messagesOf({ [FILE.sessions]: replacing('a-9x9x9x', 'a-7f3k9q') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:4:27 error Unexpected angler "a-7f3k9q" a second time in 2026-05-02-mill-pond, expected one row for each; the first is in sessions/2026/sessions.csv, line 2. Delete one of the two rows, or correct the reference. (session-duplicate)",
    ]
  `);
});

test('tells a row entered twice once', () => {
  expect(
    messagesOf({
      [FILE.events]: replacing(',1,3,', ',1,4,'),
      [FILE.sessions]: (text) => `${text}2026-05-02-mill-pond,A,10,a-9x9x9x,dnw,,,,,\n`,
    }),
  ).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:5:24 error Unexpected peg "10" a second time in 2026-05-02-mill-pond, expected one row for each; the first is in sessions/2026/sessions.csv, line 4. Delete one of the two rows, or correct the peg. (session-duplicate)",
    ]
  `);
});

test('accepts a peg taken over from one who did not come', () => {
  expect(
    messagesOf({
      [FILE.events]: replacing(',1,3,', ',1,4,'),
      [FILE.sessions]: (text) => `${text}2026-05-02-mill-pond,A,10,a-1x1,absent,,,,,\n`,
    }),
  ).toEqual([]);
});

test('accepts a chosen peg used twice in a day', () => {
  expect(
    messagesOf({ [FILE.events]: replacing(',match,', ',pleasure,'), [FILE.sessions]: replacing('A,10,', 'A,2,') }),
  ).toEqual([]);
});
