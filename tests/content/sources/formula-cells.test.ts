import { expect, test } from 'vitest';
import { FILE, messagesOf, smallCheckedVenue } from '../small-venue.ts';

const sky = (cell: string) => ({
  [FILE.events]: (text: string) => text.replace('wind_speed\n', 'wind_speed,sky\n').replace('SW,3\n', `SW,3,${cell}\n`),
});

test('warns of a cell that a spreadsheet would run', () => {
  expect(messagesOf(sky('=HYPERLINK(1)'))).toMatchInlineSnapshot(`
    [
      "sessions/2026/events.csv:2:70 warning Unexpected cell that a spreadsheet takes for a formula and runs, expected text, led by an apostrophe where it begins with =, @, + or -: '=x. If it is text, put an apostrophe in front. If nobody of the club wrote it, take it out, and ask where the file came from. (cell-formula)",
    ]
  `);
  for (const formula of ['@SUM(1)', '+cmd|x', '-cmd|x'])
    expect(messagesOf(sky(formula)).join()).toContain('(cell-formula)');
});

test('takes figures with a sign, and text that is led by an apostrophe, as what they are', () => {
  for (const cell of ['-5', '+3 showers', "'=x", '-', 'clear']) expect(messagesOf(sky(cell))).toEqual([]);
  expect(smallCheckedVenue(sky("'=x")).events[0]?.conditions).toMatchObject({ sky: '=x' });
});
