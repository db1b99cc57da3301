import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts parts that exceed the bag by the rounding of the scales', () => {
  expect(messagesOf({ [FILE.sessions]: replacing('23-08,3-08,40,20-00,6', '23-08,3-09,40,20-00,6') })).toEqual([]);
});

test('allows each part its own rounding: two parts two divisions of the scale, and no more', () => {
  const withSilvers = (weight: string) =>
    messagesOf({ [FILE.sessions]: replacing('23-08,3-08,40,20-00,6', `23-08,${weight},40,20-00,6`) });
  expect(withSilvers('3-10')).toEqual([]);
  expect(withSilvers('3-11')).toHaveLength(1);
});

test('accepts a blank that says 0', () => {
  expect(messagesOf({ [FILE.sessions]: replacing('dnw,,', 'blank,0,') })).toEqual([]);
});

test('refuses a weight on a status that has none', () => {
  expect(messagesOf({ [FILE.sessions]: replacing('dnw,,', 'dnw,2-04,') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:4:40 error Unexpected weight 2-04, expected no weight for the status dnw. Take the weight out, or write the status weighed. (weight-on-status)",
    ]
  `);
});

test('refuses a blank with a weight, and a part on a status that has none', () => {
  expect(messagesOf({ [FILE.sessions]: replacing('dnw,,,,,', 'blank,2-04,2-04,,,') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:4:42 error Unexpected weight 2-04, expected no weight, or 0, for a blank. Take the weight out, or write the status weighed. (weight-on-status)",
      "sessions/2026/sessions.csv:4:47 error Unexpected 2-04 for silvers_weight, expected no part of a bag for the status blank. Take it out, or write the status weighed. (weight-on-status)",
    ]
  `);
});

test('refuses a weighed session without a weight, or with 0', () => {
  expect(
    messagesOf({ [FILE.sessions]: (text) => text.replace('10 lb 4 oz', '').replace('23-08,3-08,40,20-00,6', '0,,,,') }),
  ).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:2:43 error Unexpected weight of 0, expected a weight above 0 for a weighed session. Write the weight; for a bag of nothing write the status blank, for one never put on the scales dnw. (weight-missing)",
      "sessions/2026/sessions.csv:3:43 error Found no weight, expected a weight above 0 for a weighed session. Write the weight; for a bag of nothing write the status blank, for one never put on the scales dnw. (weight-missing)",
    ]
  `);
});

test('refuses parts that outweigh the bag', () => {
  expect(messagesOf({ [FILE.sessions]: replacing('23-08,3-08', '23-08,4-08') })).toMatchInlineSnapshot(`
    [
      "sessions/2026/sessions.csv:2:49 error Unexpected parts that weigh 24 lb 8 oz together, expected no more than the bag, 23 lb 8 oz. Correct the bag or one of its parts. (parts-weight)",
    ]
  `);
});
