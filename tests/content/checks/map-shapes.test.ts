import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts an outline drawn in either direction', () => {
  expect(
    messagesOf({
      [FILE.map]: replacing(
        '[[-0.051,52.75],[-0.0498,52.75],[-0.0498,52.7507],[-0.051,52.7507],[-0.051,52.75]]',
        '[[-0.051,52.75],[-0.051,52.7507],[-0.0498,52.7507],[-0.0498,52.75],[-0.051,52.75]]',
      ),
    }),
  ).toEqual([]);
});

test('refuses an outline that crosses itself', () => {
  expect(
    messagesOf({ [FILE.map]: replacing('[-0.0498,52.75],[-0.0498,52.7507]', '[-0.0498,52.7507],[-0.0498,52.75]') }),
  ).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:2:1 error Unexpected outline that crosses itself where the sides from -0.051, 52.75 and from -0.0498, 52.75 meet, expected a ring whose sides meet only at its corners. Move one of the corners there, or put the points in their order along the bank. (ring-crossing)",
    ]
  `);
});

test('refuses an island that reaches outside the outline', () => {
  expect(
    messagesOf({ [FILE.map]: replacing('[-0.0503,52.7503],[-0.0503,52.7504]', '[-0.0503,52.7503],[-0.0503,52.7509]') }),
  ).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:3:1 error Unexpected island Swan Island that reaches outside the outline at -0.0503, 52.7509, expected an island inside the outline. Move the point inside, or draw the land there as part of the bank. (island-outside)",
    ]
  `);
});
