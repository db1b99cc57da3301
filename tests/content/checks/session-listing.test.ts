import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts unlisted sessions of an event that lists its frame', () => {
  expect(
    messagesOf({ [FILE.events]: replacing(',full,', ',frame,'), [FILE.sessions]: replacing(',dnw,', ',unlisted,') }),
  ).toEqual([]);
});

test('refuses an unlisted session where every weight is listed', () => {
  expect(messagesOf({ [FILE.sessions]: replacing(',dnw,', ',unlisted,') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:4:36 error Unexpected unlisted for status, expected weighed, blank or dnw: 2026-05-02-mill-pond lists every weight. Correct the status, or write the listing frame in events.csv. (status-listing)",
    ]
  `);
});

test('refuses fewer who fished than there are sessions', () => {
  expect(messagesOf({ [FILE.events]: replacing(',1,3,', ',1,2,') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/events.csv:2:58 error Unexpected 2 for fished, expected at least 3, the sessions logged for it. Correct the number, or leave the cell empty. (event-fished)",
    ]
  `);
});
