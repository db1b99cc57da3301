import { describe, expect, test } from 'vitest';
import { isLandAhead, pegStand } from '../../src/ground/peg-stand.ts';
import { waterPlane } from '../../src/ground/water-plane.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { pondMap, rectangle, spot } from './example-pond.ts';

const REACH = { poleMetres: 13, castMetres: 30, sectorDegrees: 90 };
const pond = waterPlane(pondMap({ islands: [{ id: 'isle', ring: rectangle(-6, -13, 6, -7) }] }));

function stand(x: number, y: number, facingDegrees: number) {
  return pegStand(examplePeg('1', { at: spot(x, y), facingDegrees }), pond, REACH);
}

describe('a peg on its water', () => {
  test('behind the bank looks over its edge to the far bank, past the island', () => {
    const found = stand(0, -31, 0);
    expect(found.edgeMetres).toBeCloseTo(1, 3);
    expect(found.farBankMetres).toBeCloseTo(61, 3);
    expect(found.changesMetres.map(Math.round)).toEqual([1, 18, 24, 61]);
    expect([0.5, 5, 20, 30].map((metres) => isLandAhead(found, metres))).toEqual([true, false, true, false]);
  });

  test('on a platform over the water begins in the water', () => {
    const found = stand(30, -29, 0);
    expect(found.edgeMetres).toBe(0);
    expect(found.farBankMetres).toBeCloseTo(59, 3);
    expect(isLandAhead(found, 0)).toBe(false);
  });

  test('on an island looks to the bank of the outline', () => {
    const found = stand(0, -6.9, 0);
    expect(found.farBankMetres).toBeCloseTo(36.9, 2);
    expect(stand(0, -7.1, 0).edgeMetres).toBeCloseTo(0.1, 3);
  });

  test.each([
    ['with its back to the water', 0, -31, 180],
    ['along the bank', 0, -31, 90],
    ['from too far behind the bank', 0, -41, 0],
  ])('facing away %s has neither edge nor far bank', (_, x, y, facing) => {
    expect(stand(x, y, facing)).toMatchObject({ edgeMetres: null, farBankMetres: null, changesMetres: [] });
  });

  test('turns true bearings by the meridian: a kilometre east of the middle by a hundredth of a degree', () => {
    const long = waterPlane(pondMap({ outline: rectangle(-1000, -30, 1000, 30) }));
    const found = pegStand(examplePeg('1', { at: spot(900, -31), facingDegrees: 0 }), long, REACH);
    // Convergence is the easting over the radius times the tangent of the latitude.
    expect(found.turnDegrees).toBeCloseTo(-((900 / 6_391_000) * Math.tan((52.75 * Math.PI) / 180) * 180) / Math.PI, 4);
  });
});
