import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts a line that runs on for miles, if it passes the water', () => {
  expect(messagesOf({ [FILE.map]: replacing('[-0.044,52.7525]', '[0.9,52.7525]') })).toEqual([]);
});

test('refuses a gate with latitude and longitude swapped', () => {
  expect(messagesOf({ [FILE.map]: replacing('[-0.0512,52.7499]', '[52.7499,-0.0512]') })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:1 error Unexpected Road gate, 7617 km from the water, expected a place within 5 km of the outline. Latitude and longitude are swapped: GeoJSON writes [longitude, latitude]. (map-swapped)",
    ]
  `);
});

test('refuses a gate that stands elsewhere', () => {
  expect(messagesOf({ [FILE.map]: replacing('[-0.0512,52.7499]', '[-0.0512,52.8499]') })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:1 error Unexpected Road gate, 11 km from the water, expected a place within 5 km of the outline. Correct its coordinates, or move it to the map it belongs to. (map-far)",
    ]
  `);
});
