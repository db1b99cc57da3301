import fc from 'fast-check';
import { expect, test } from 'vitest';
import { destination } from '../../../src/ground/geodesy/destination.ts';
import { distanceMetres, geodesicBetween } from '../../../src/ground/geodesy/geodesic-between.ts';

test('no distance is no way', () => {
  expect(destination({ lat: 52.75, lng: -0.05 }, 123, 0)).toEqual({ lat: 52.75, lng: -0.05 });
  expect(geodesicBetween({ lat: 52.75, lng: -0.05 }, { lat: 52.75, lng: -0.05 })).toEqual({
    distanceMetres: 0,
    bearingDegrees: 0,
    arrivalBearingDegrees: 0,
  });
});

test('a way over the date line comes out on the other side of it', () => {
  const { lng } = destination({ lat: -17.7, lng: 179.9999 }, 90, 100);
  expect(lng).toBeGreaterThan(-180);
  expect(lng).toBeLessThan(-179.99);
});

test('a way over the pole comes down on the other side', () => {
  const beyond = destination({ lat: 89.9995, lng: 0 }, 0, 100);
  expect(Math.abs(beyond.lng)).toBeCloseTo(180, 6);
  expect(beyond.lat).toBeLessThan(90);
  expect(distanceMetres({ lat: 90, lng: 0 }, { lat: 90, lng: 77 })).toBeLessThan(1e-6);
});

test('the way back from a destination has its length and lies on its bearing', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -85, max: 85, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: 0, max: 359.9, noNaN: true }),
      fc.double({ min: 1, max: 20_000, noNaN: true }),
      (lat, lng, bearing, metres) => {
        const found = geodesicBetween({ lat, lng }, destination({ lat, lng }, bearing, metres));
        expect(found.distanceMetres).toBeCloseTo(metres, 5);
        const off = ((found.bearingDegrees - bearing + 540) % 360) - 180;
        expect((Math.abs(off) * Math.PI * metres) / 180).toBeLessThan(1e-4);
      },
    ),
  );
});
