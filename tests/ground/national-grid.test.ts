import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceMetres } from '../../src/ground/geodesy/geodesic-between.ts';
import { formatGridReference, gridReference, parseGridReference } from '../../src/ground/national-grid.ts';

describe('a grid reference', () => {
  test('has two letters and eight figures', () => {
    expect(gridReference({ lat: 52.75126, lng: -0.05481 })).toMatch(/^TF \d{4} \d{4}$/);
  });

  test.each([
    ['Wexford', 52.34, -6.46],
    ['the Ards', 54.5, -5.5],
    ['Belfast', 54.6, -5.93],
    ['Rathlin Island', 55.29, -6.2],
    ['Calais', 50.95, 1.85],
    ['Jersey', 49.21, -2.13],
    ['the North Sea', 54.5, 2.5],
    ['the pole', 90, 0],
    ['the date line', -17.7, 180],
  ])('is left out in or at %s', (_, lat, lng) => {
    expect(gridReference({ lat, lng })).toBeNull();
  });

  test.each([
    ['Land’s End', 50.066, -5.715, 'SW'],
    ['Lowestoft', 52.481, 1.76, 'TM'],
    ['the Mull of Kintyre', 55.31, -5.8, 'NR'],
    ['Stranraer', 54.9, -5.03, 'NX'],
    ['St David’s', 51.88, -5.27, 'SM'],
    ['Unst', 60.75, -0.87, 'HP'],
  ])('is given at %s', (_, lat, lng, square) => {
    expect(gridReference({ lat, lng })?.slice(0, 2)).toBe(square);
  });
});

test('a place on the grid far off its map has no reference, though letters would come round to it', () => {
  for (const eastingMetres of [-1, 700_000, 2_600_000]) {
    expect(formatGridReference({ eastingMetres, northingMetres: 600_000 }, 8)).toBeNull();
  }
  for (const northingMetres of [-1, 1_300_000, -2_000_000, 3_000_000]) {
    expect(formatGridReference({ eastingMetres: 400_000, northingMetres }, 8)).toBeNull();
  }
  expect(formatGridReference({ eastingMetres: 400_000, northingMetres: 0 }, 8)).toBe('SZ 0000 0000');
});

describe('reading a grid reference', () => {
  test('comes back within the half diagonal of its 10 m square', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 51, max: 57, noNaN: true }),
        fc.double({ min: -3, max: 0, noNaN: true }),
        (lat, lng) => {
          const reference = gridReference({ lat, lng });
          if (reference === null) return;
          expect(distanceMetres(parseGridReference(reference)!, { lat, lng })).toBeLessThan(7.1);
        },
      ),
    );
  });

  test.each(['TF 31274 18806', 'TF3127418806', 'tf 31274 18806', ' TF  31274  18806 '])('takes "%s"', (text) => {
    const found = parseGridReference(text)!;
    expect(distanceMetres(found, parseGridReference('TF 31274 18806')!)).toBe(0);
  });

  test.each([
    ['', 'nothing'],
    ['TF', 'no figures'],
    ['TF 312 18806', 'figures of two lengths'],
    ['TF 3127418', 'an odd number of figures'],
    ['TF 312741 188061', 'more figures than a metre'],
    ['TI 31274 18806', 'the letter I'],
    ['AA 31274 18806', 'a square without land'],
    ['52.75, -0.05', 'latitude and longitude'],
    ['H 31274 18806', 'one letter, as in Ireland'],
  ])('refuses "%s": %s', (text) => {
    expect(parseGridReference(text)).toBeNull();
  });
});
