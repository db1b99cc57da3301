import { expect, test } from 'vitest';
import { sweptMetres } from '../../src/ground/stand-off.ts';
import { FILE, replacing, smallCheckedVenue } from './small-venue.ts';

const WITHOUT = { [FILE.peg]: replacing('facing: 0\n', '') };

test('a peg without a facing looks straight out from the shore as drawn, and says that nobody wrote it', () => {
  const written = smallCheckedVenue({}).pegs.find(({ peg }) => peg === '1')!;
  const left = smallCheckedVenue(WITHOUT).pegs.find(({ peg }) => peg === '1')!;
  expect(written.isFacingEstimated).toBeUndefined();
  expect(left).toMatchObject({ isFacingEstimated: true });
  expect([0, 90, 180, 270]).toContain(left.facingDegrees);
});

test('an overhead line behind such a peg counts as one in front of it', () => {
  // Straight to the south, 70 m off, a peg that faces north; pole behind to 16 m, cast ahead to 40 m.
  const line = {
    line: [
      { x: -50, y: -70 },
      { x: 50, y: -70 },
    ],
    takenOffMetres: 0,
  };
  const reach = { poleMetres: 16, castMetres: 40, sectorDegrees: 90 };
  expect(sweptMetres([line], { facingDegrees: 0 }, reach)).toBeCloseTo(54, 6);
  expect(sweptMetres([line], { facingDegrees: 0, isFacingEstimated: true }, reach)).toBeCloseTo(30, 6);
});
