import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts lists whose ids are each used once', () => {
  expect(
    messagesOf({
      [FILE.venue]: replacing(
        'stand-off:',
        'risk-bands: [{ from: 1, name: low, meaning: watch }, { from: 9, name: high, meaning: act }]\nstand-off:',
      ),
    }),
  ).toEqual([]);
});

test('refuses a feature listed twice', () => {
  expect(messagesOf({ [FILE.venue]: replacing('id: reeds', 'id: corner') })).toMatchInlineSnapshot(`
    [
      "venue.md:15:11 error Unexpected "corner" a second time for features[1].id, expected each id once. Keep one of the two. (list-duplicate)",
    ]
  `);
});

test('refuses bands that do not begin at 1 or do not rise', () => {
  expect(
    messagesOf({
      [FILE.venue]: replacing(
        'stand-off:',
        'risk-bands: [{ from: 2, name: low, meaning: watch }, { from: 2, name: high, meaning: act }]\nstand-off:',
      ),
    }),
  ).toMatchInlineSnapshot(`
    [
      "venue.md:16:22 error Unexpected 2 for risk-bands[0].from, expected 1 for the first band. Order the bands from the lowest score, the first from 1. (risk-bands)",
      "venue.md:16:62 error Unexpected 2 for risk-bands[1].from, expected more than 2, where the band before begins. Order the bands from the lowest score, the first from 1. (risk-bands)",
    ]
  `);
});
