import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LatLng } from '../../src/domain/place.ts';
import { isAnticlockwise, normalRing } from '../../src/domain/ring.ts';

const ring = (...corners: readonly (readonly [number, number])[]): LatLng[] =>
  corners.map(([lng, lat]) => ({ lat, lng }));
const SQUARE = ring([0, 52], [0.001, 52], [0.001, 52.001], [0, 52.001]);

describe('a ring as it is read', () => {
  it('runs anticlockwise from the corner it was begun at, whichever way it was drawn', () => {
    expect(normalRing(SQUARE)).toEqual(SQUARE);
    expect(normalRing([SQUARE[0]!, ...SQUARE.slice(1).reverse()])).toEqual(SQUARE);
  });

  it('has no corner twice in a row, nor the first again at its end', () => {
    expect(normalRing(SQUARE.flatMap((corner) => [corner, corner]))).toEqual(SQUARE);
    expect(normalRing([...SQUARE, { lat: 52 + 1e-9, lng: 1e-9 }])).toEqual(SQUARE);
  });

  it('keeps a corner that is met again later', () => {
    expect(normalRing(ring([0, 0], [2, 0], [1, 1], [0, 2], [2, 2], [1, 1]))).toHaveLength(6);
  });

  it('has fewer than three corners where it was one spot or two', () => {
    expect(normalRing([SQUARE[0]!, SQUARE[0]!, SQUARE[0]!])).toHaveLength(1);
    expect(normalRing([SQUARE[0]!, SQUARE[1]!, SQUARE[1]!, SQUARE[0]!])).toHaveLength(2);
    expect(normalRing([])).toEqual([]);
  });

  it('is turned the right way across the date line', () => {
    const across = ring([179.999, 1], [-179.999, 1], [-179.999, 1.002], [179.999, 1.002]);
    expect(isAnticlockwise(across)).toBe(true);
    expect(isAnticlockwise(across.toReversed())).toBe(false);
  });

  it('is the same when it is read again', () => {
    const corner = fc.record({ lat: fc.integer({ min: 0, max: 3 }), lng: fc.integer({ min: 0, max: 3 }) });
    fc.assert(
      fc.property(fc.array(corner, { maxLength: 8 }), (corners) => {
        const once = normalRing(corners);
        expect(normalRing(once)).toEqual(once);
      }),
    );
  });
});
