import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts claims the map bears out', () => {
  expect(
    messagesOf({
      [FILE.peg]: replacing(
        'features:',
        'reach: [{ what: far-bank, distance: 78 m }, { what: shelf, distance: 4 m }]\nfeatures:',
      ),
    }),
  ).toEqual([]);
});

test('warns of a peg that faces away from the water', () => {
  expect(messagesOf({ [FILE.peg]: replacing('facing: 0', 'facing: S') })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:5:9 warning Unexpected S for facing, expected a bearing with water within 10 m straight out. Take the bearing again, looking out over the float, or correct the position. (facing-away)",
    ]
  `);
});

test('warns of a claim more than 3 m off the map', () => {
  expect(
    messagesOf({
      [FILE.peg]: replacing(
        'features:',
        'reach: [{ what: far-bank, distance: 70 m }, { what: aerator, distance: 20 m }]\nfeatures:',
      ),
    }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:6:37 warning Unexpected far-bank at 70 m, expected 79.0 m, as the map has it, give or take 3 m. Measure again, or correct the map or the facing. (reach-map)",
      "pegs/mill-pond/1.md:6:72 warning Unexpected aerator at 20 m, expected something the map shows in front of the peg. Measure again, or correct the map or the facing. (reach-map)",
    ]
  `);
});
