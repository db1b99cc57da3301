import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts a peg a metre or two over the edge as drawn', () => {
  expect(messagesOf({ [FILE.peg]: replacing('52.74999', '52.75002') })).toEqual([]);
});

test('accepts a peg farther out at the end of a long platform', () => {
  expect(
    messagesOf({
      [FILE.peg]: replacing(
        '52.74999, lng: -0.0509 }',
        '52.75006, lng: -0.0509 }\nplatform: { kind: timber, length: 4 m }',
      ),
    }),
  ).toEqual([]);
});

test('accepts a peg on an island', () => {
  expect(messagesOf({ [FILE.peg]: replacing('52.74999, lng: -0.0509', '52.75032, lng: -0.05034') })).toEqual([]);
});

test('refuses a peg that stands in the water', () => {
  expect(messagesOf({ [FILE.peg]: replacing('52.74999', '52.7502') })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:4:11 error Unexpected place in the water, 6.8 m from the bank, expected a place on the bank, or at most 3 m over the edge as drawn (the map may be out, and a platform reaches out). Look the position up again, or correct the outline or the length of the platform. (position-in-water)",
    ]
  `);
});

test('refuses a peg 500 m from the water', () => {
  expect(messagesOf({ [FILE.peg]: replacing('52.74999', '52.7455') })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:4:11 error Unexpected place 501 m from the edge of mill-pond, expected a place within 60 m of the water. Look the position up again, or correct the outline. (position-far)",
    ]
  `);
});

test('refuses latitude and longitude swapped', () => {
  expect(
    messagesOf({ [FILE.peg]: replacing('lat: 52.74999, lng: -0.0509', 'lat: -0.0509, lng: 52.74999') }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:4:11 error Unexpected place 7617 km from mill-pond, expected a place within 60 m of the water. Latitude and longitude are swapped: exchange the two. (position-swapped)",
    ]
  `);
});

test('blames the map where most pegs disagree with it', () => {
  expect(
    messagesOf({ [FILE.map]: (text) => text.replaceAll(/\[(-0\.0\d+),(52\.\d+)\]/g, '[$2,$1]') }),
  ).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:2:1 error Unexpected outline far from the pegs of mill-pond, which would lie beside them with latitude and longitude swapped, expected positions as [longitude, latitude]. Export the map again as GeoJSON. If the map is right, exchange lat and lng in the pegs. (map-swapped)",
    ]
  `);
});

test('warns of two pegs on one spot', () => {
  expect(messagesOf({ 'pegs/mill-pond/2.md': replacing('-0.0506', '-0.0509') })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/2.md:4:11 warning Unexpected place of peg 1, expected a place of its own. Correct one of the two positions. (position-shared)",
    ]
  `);
});
