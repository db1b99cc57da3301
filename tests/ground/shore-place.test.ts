import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { destination } from '../../src/ground/geodesy/destination.ts';
import { shorePlaces } from '../../src/ground/shore-place.ts';

const MIDDLE = { lat: 52.75, lng: -0.05 };
/** A round water of 50 m about its middle: every place on its bank faces the middle. */
const ROUND = Array.from({ length: 72 }, (_, index) => destination(MIDDLE, index * 5, 50));

describe('shorePlaces', () => {
  it('faces the middle of a round water from anywhere on its bank, whichever way the ring runs', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.boolean(),
        (bearing, out, isTurned) => {
          const outline = isTurned ? ROUND.toReversed() : ROUND;
          const place = shorePlaces({ outline, islands: [] })(destination(MIDDLE, bearing, 50 + out));
          const turn = Math.abs(((place.facingDegrees - (bearing + 180) + 540) % 360) - 180);
          // A chord of 5° is square to the middle within 2.5°; half a degree is rounding.
          expect(turn).toBeLessThanOrEqual(3.01);
          expect(place.metresFromWater).toBeCloseTo(out, 0);
        },
      ),
    );
  });

  it('faces away from an island on which a peg stands', () => {
    const islands = [{ id: 'i', ring: ROUND.map((_, index) => destination(MIDDLE, index * 5, 10)) }];
    expect(shorePlaces({ outline: ROUND, islands })(destination(MIDDLE, 90, 9)).facingDegrees).toBeGreaterThan(85);
    expect(shorePlaces({ outline: ROUND, islands })(destination(MIDDLE, 90, 9)).facingDegrees).toBeLessThan(95);
  });
});
