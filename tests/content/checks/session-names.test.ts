import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('refuses a session on an unknown peg, with the nearest name', () => {
  expect(messagesOf({ [FILE.sessions]: replacing(',A,10,', ',A,100,') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:4:24 error Unexpected "100" for peg, expected one of the 3 pegs of mill-pond. Did you mean 10? (peg-unknown)",
    ]
  `);
});

test('refuses a session of an unknown event', () => {
  expect(
    messagesOf({ [FILE.sessions]: replacing('2026-05-02-mill-pond,A,10', '2026-05-02-mill-pnd,A,10') }),
  ).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:4:1 error Unexpected "2026-05-02-mill-pnd" for event, expected an event of an events.csv. Did you mean 2026-05-02-mill-pond? (event-unknown)",
    ]
  `);
});

test('says once that the list of events is missing', () => {
  expect(messagesOf({ [FILE.events]: null })).toMatchInlineSnapshot(`
    [
      "sessions/2026/events.csv:1:1 error Found no such file, expected the events of the sessions beside it. Write a row for each event: its date, water, kind, hours, listing and frame places. (events-missing)",
    ]
  `);
});

test('does not blame sessions for a fault in their event', () => {
  expect(messagesOf({ [FILE.events]: replacing(',match,5,', ',match,five,') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/events.csv:2:49 error Unexpected "five" for hours, expected a number from 0.5 to 72. Write the bare number. (number)",
    ]
  `);
});
