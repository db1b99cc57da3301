import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pegStand } from '../../src/ground/peg-stand.ts';
import { waterPlane } from '../../src/ground/water-plane.ts';
import { fetchMetres, windMeets, windsAtPeg } from '../../src/ground/wind-at-peg.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { pondMap, rectangle, spot } from './example-pond.ts';

describe('a wind', () => {
  test.each([
    [0, 0, 'face'],
    [0, 45, 'face'],
    [0, 90, 'across from the right'],
    [0, 270, 'across from the left'],
    [0, 180, 'back'],
    [0, 135, 'back'],
    [350, 30, 'face'],
    [350, 70, 'across from the right'],
    [200, 30, 'back'],
  ] as const)('facing %i°, from %i°, meets the angler: %s', (facing, from, meets) => {
    expect(windMeets(facing, from)).toBe(meets);
  });

  test('meets as it did when angler and wind turn together', () => {
    const angle = fc.integer({ min: 0, max: 359 });
    fc.assert(
      fc.property(
        angle,
        angle,
        angle,
        (facing, from, turn) => windMeets(facing + turn, from + turn) === windMeets(facing, from),
      ),
    );
  });
});

describe('the sixteen winds of a peg', () => {
  const pond = waterPlane(pondMap({ islands: [{ id: 'isle', ring: rectangle(-6, -13, 6, -7) }] }));
  const peg = examplePeg('1', { at: spot(0, -31), facingDegrees: 0 });
  const winds = windsAtPeg(0, pegStand(peg, pond, { poleMetres: 13, castMetres: 30, sectorDegrees: 90 }), pond);
  const from = (name: string) => winds.find((wind) => wind.from === name)!;

  test('are named clockwise from north', () => {
    expect(winds.map(({ from: name }) => name).join(' ')).toBe('N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW');
  });

  test('have the open water they crossed from the first bank or island, seen from a metre off the bank', () => {
    expect(from('N').fetchMetres).toBeCloseTo(16, 2);
    expect(from('E').fetchMetres).toBeCloseTo(50, 2);
    expect(from('NE').fetchMetres).toBeCloseTo(Math.SQRT2 * 50, 1);
    expect(from('S').fetchMetres).toBeCloseTo(1, 2);
  });

  test('have no fetch on land', () => {
    expect(fetchMetres(pond, { x: 0, y: -10 }, 0)).toBe(0);
  });
});
