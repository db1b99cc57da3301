import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

const weights = (...written: readonly string[]) => ({
  [FILE.events]: replacing(',match,5,full,1,3,', ',pleasure,5,full,1,,'),
  [FILE.sessions]: `event,peg,status,weight\n${written
    .map((weight, i) => `2026-05-02-mill-pond,${['1', '2', '10'][i % 3]},weighed,${weight}`)
    .join('\n')}\n`,
});
test('warns once where decimals look like ounces', () => {
  expect(messagesOf(weights('12.14', '8.02', '10.1', '3.15', '7.11'))).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:2:32 warning Unexpected "12.14" and 4 more weights with a point and no fraction above .15 for weight, expected pounds and ounces as 12-14, if those were meant; as it stands it is read as 12 lb 2 oz. Write a hyphen between pounds and ounces. Decimal pounds may stay as they are. (weight-decimal)",
    ]
  `);
});

test('accepts decimal pounds, which soon show a fraction above .15', () => {
  expect(messagesOf(weights('12.14', '8.02', '10.1', '3.15', '7.11', '4.75'))).toEqual([]);
});

test('accepts them in a venue that weighs in kilograms', () => {
  const metric = { [FILE.venue]: replacing('weight: lb', 'weight: kg') };
  expect(messagesOf({ ...weights('12.14', '8.02', '10.1', '3.15', '7.11'), ...metric })).toEqual([]);
});
