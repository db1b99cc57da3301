import fc from 'fast-check';
import { expect, test } from 'vitest';
import { halfTurnDegrees, wholeTurnDegrees } from '../../../src/ground/geodesy/ellipsoid.ts';

test.each([
  [0, 0, 0],
  [360, 0, 0],
  [-90, 270, -90],
  [180, 180, 180],
  [-180, 180, 180],
  [540.5, 180.5, -179.5],
  [-1e-15, 0, 0],
])('%f° is %f° of a whole turn and %f° of a half turn to either side', (degrees, whole, half) => {
  expect(wholeTurnDegrees(degrees)).toBe(whole);
  expect(halfTurnDegrees(degrees)).toBe(half);
});

test('any angle comes back within its turn and points the same way', () => {
  fc.assert(
    fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (degrees) => {
      const [whole, half] = [wholeTurnDegrees(degrees), halfTurnDegrees(degrees)];
      expect(whole >= 0 && whole < 360).toBe(true);
      expect(half > -180 && half <= 180).toBe(true);
      for (const turned of [whole, half])
        expect(Math.sin((turned * Math.PI) / 180)).toBeCloseTo(Math.sin((degrees * Math.PI) / 180), 9);
    }),
  );
});
