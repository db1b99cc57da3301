import { describe, expect, test } from 'vitest';
import type { MapArea, MapPlace } from '../../src/domain/map.ts';
import { pegStand } from '../../src/ground/peg-stand.ts';
import { reachFindings } from '../../src/ground/reach-findings.ts';
import { reachMarks, reachTargets } from '../../src/ground/reach-targets.ts';
import { waterPlane } from '../../src/ground/water-plane.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { pondMap, rectangle, spot } from './example-pond.ts';

const reeds: MapArea = { id: 'r', kind: 'reeds', name: 'West reeds', ring: rectangle(-50, -30, -46, 0) };
const aerator: MapPlace = { id: 'a', kind: 'aerator', name: 'Aerator', at: spot(20, 0) };
const outlet: MapPlace = { id: 'o', kind: 'outlet', name: 'Monk', at: spot(5, 10) };
const isle = { id: 'isle', name: 'The Isle', ring: rectangle(-6, -13, 6, -7) };

function targets(facingDegrees: number, sectorDegrees = 90, map = pondMap({ islands: [isle] })) {
  const pond = waterPlane(map);
  const peg = examplePeg('1', { at: spot(0, -31), facingDegrees });
  const stand = pegStand(peg, pond, { poleMetres: 13, castMetres: 40, sectorDegrees });
  return reachTargets(stand, pond, reachMarks(pond, [reeds], [aerator, outlet]));
}

describe('what lies in front of a peg', () => {
  test('is the far bank straight out, islands, reeds and aerators of the sector, the nearest first', () => {
    const found = targets(0);
    expect(found.map(({ what, name }) => name ?? what)).toEqual(['The Isle', 'Aerator', 'far-bank']);
    expect(found[0]!.distanceMetres).toBeCloseTo(18, 3);
    expect(found[0]!.aheadMetres).toBeCloseTo(18, 3);
    expect(found[1]!.distanceMetres).toBeCloseTo(Math.hypot(20, 31), 2);
    expect(found[1]!.bearingDegrees).toBeCloseTo((Math.atan2(20, 31) * 180) / Math.PI, 2);
    expect(found[2]!.distanceMetres).toBeCloseTo(61, 3);
  });

  test('is told to the nearest point inside the sector, not to the nearest of all', () => {
    const wide = targets(0, 178).find(({ what }) => what === 'reeds')!;
    const narrow = targets(-45, 60).find(({ what }) => what === 'reeds')!;
    expect(wide.distanceMetres).toBeGreaterThan(46);
    expect(wide.distanceMetres).toBeLessThan(46.2);
    expect(narrow.distanceMetres).toBeCloseTo(46 / Math.sin((75 * Math.PI) / 180), 1);
  });

  test('does not count what a headland hides', () => {
    const headland = [
      spot(-50, -30),
      spot(-20, -30),
      spot(-20, 20),
      spot(-14, 20),
      spot(-14, -30),
      spot(50, -30),
      spot(50, 30),
      spot(-50, 30),
    ];
    expect(targets(0, 178, pondMap({ outline: headland })).some(({ what }) => what === 'reeds')).toBe(false);
  });

  test('is nothing for a peg that faces away', () => {
    expect(targets(180)).toEqual([]);
  });
});

describe('a claim of the record', () => {
  const reach = targets(0);
  const findings = (what: string, distanceMetres: number) =>
    reachFindings(
      { pegs: [examplePeg('1', { reach: [{ what, distanceMetres }] })] },
      { pegs: { 'pit/1': { reach } } },
    ).map(({ mappedMetres }) => (mappedMetres === null ? null : Math.round(mappedMetres)));

  test('within 3 m of the map is borne out', () => {
    expect([findings('island', 15.1), findings('island', 20.9), findings('far-bank', 59)]).toEqual([[], [], []]);
  });

  test('more than 3 m off is reported with the map’s distance', () => {
    expect([findings('island', 14.9), findings('far-bank', 50)]).toEqual([[18], [61]]);
  });

  test('of something the map does not have in the sector is reported', () => {
    expect(findings('lilies', 12)).toEqual([null]);
  });

  test('of a mark farther than the survey tells is left alone, of the far bank never', () => {
    expect([findings('lilies', 98), findings('far-bank', 150)]).toEqual([[], [61]]);
  });

  test('of a shelf is on no map and is left alone', () => {
    expect(findings('shelf', 4)).toEqual([]);
  });
});
