import { describe, expect, test } from 'vitest';
import type { Peg } from '../../src/domain/peg.ts';
import { depthSurface } from '../../src/ground/depth/depth-surface.ts';
import { depthProfile, lineDepths } from '../../src/ground/line-depths.ts';
import { pegStand } from '../../src/ground/peg-stand.ts';
import { waterPlane } from '../../src/ground/water-plane.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { pondMap, rectangle, spot } from './example-pond.ts';

const REACH = { poleMetres: 13, castMetres: 30, sectorDegrees: 90 };
/** An island from 18.25 to 23.75 m straight out of the peg. */
const pond = waterPlane(pondMap({ islands: [{ id: 'isle', ring: rectangle(-6, -12.75, 6, -7.25) }] }));
const peg = (changes: Partial<Peg> = {}) => examplePeg('1', { at: spot(0, -31), facingDegrees: 0, ...changes });
/** Plumbed every metre straight out as far as the island, 0.2 m deeper each metre. */
const surface = depthSurface(
  pond,
  Array.from({ length: 16 }, (_, i) => ({ x: 0, y: -29 + i, depthMetres: 0.2 * (i + 1) })),
);

function depths(changes: Partial<Peg> = {}, bed = surface) {
  const placed = peg(changes);
  return lineDepths(placed, pegStand(placed, pond, REACH), bed);
}

function line(id: string, changes: Partial<Peg> = {}) {
  return depths(changes).find((depth) => depth.id === id)!;
}

describe('the lines of the trade', () => {
  test('are margin, top kit + 2, four poles and three casts, in that order', () => {
    expect(depths().map(({ id }) => id)).toEqual([
      'margin',
      'top-kit-2',
      'pole-6',
      'pole-11',
      'pole-13',
      'pole-16',
      'cast-20',
      'cast-30',
      'cast-40',
    ]);
  });

  test('are measured from the peg: 6 m of pole is 5 m out from the edge 1 m before it', () => {
    expect(line('pole-6').depthMetres).toBeCloseTo(1, 3);
    expect(line('pole-6').nearestSoundingMetres).toBeCloseTo(0, 3);
    expect(line('margin').distanceMetres).toBeCloseTo(1.5, 3);
    expect(line('margin').depthMetres).toBeCloseTo(0.1, 3);
  });

  test('tell an island, the far bank and what is not plumbed apart', () => {
    expect(line('cast-20')).toMatchObject({ depthMetres: null, why: 'island' });
    expect(line('cast-40')).toMatchObject({ depthMetres: null, why: 'unplumbed' });
    expect(line('cast-40').nearestSoundingMetres).toBeGreaterThan(10);
    expect(line('cast-40', { facingDegrees: 90, at: spot(15, 0) })).toMatchObject({
      depthMetres: null,
      why: 'beyond',
    });
  });

  test('say what the peg permits', () => {
    expect(
      depths()
        .filter(({ permitted }) => !permitted)
        .map(({ id }) => id),
    ).toEqual(['pole-16', 'cast-40']);
  });

  test('give the record’s own margin depth, which was measured there', () => {
    expect(line('margin', { marginDepthMetres: 0.45 })).toMatchObject({ depthMetres: 0.45, nearestSoundingMetres: 0 });
  });

  test('short of the water have none', () => {
    expect(line('top-kit-2', { at: spot(0, -37) })).toMatchObject({ depthMetres: null, why: 'short' });
  });

  test('are all not plumbed on a water without soundings', () => {
    expect(
      depths({}, null)
        .filter(({ why }) => why === 'unplumbed')
        .map(({ id }) => id),
    ).toEqual(['margin', 'top-kit-2', 'pole-6', 'pole-11', 'pole-13', 'pole-16', 'cast-30', 'cast-40']);
  });

  test('are none for a peg that faces away from the water', () => {
    expect(depths({ facingDegrees: 180 })).toEqual([]);
  });
});

describe('the profile', () => {
  const profile = depthProfile(pegStand(peg(), pond, REACH), surface);

  test('starts on the bank, meets the water at its edge and ends as far as the peg permits', () => {
    expect(profile[0]).toEqual({ distanceMetres: 0, depthMetres: 0, land: true });
    const edge = profile.find(({ land }) => !land)!;
    expect(edge.distanceMetres).toBeCloseTo(1, 3);
    expect(edge.depthMetres).toBeCloseTo(0, 6);
    expect(profile[profile.length - 1]!.distanceMetres).toBe(30);
  });

  test('shows the island as land, with both its shores', () => {
    const island = profile.filter(({ land, distanceMetres }) => land && distanceMetres > 2);
    expect(island[0]!.distanceMetres).toBe(18.5);
    expect(island[island.length - 1]!.distanceMetres).toBe(23.5);
    const shores = profile.filter(
      ({ distanceMetres }) => Math.abs(distanceMetres - 18.25) < 0.01 || Math.abs(distanceMetres - 23.75) < 0.01,
    );
    expect(shores.map(({ land }) => land)).toEqual([false, false]);
  });

  test('has no depth where the bed is not plumbed', () => {
    expect(
      profile.filter(({ distanceMetres }) => distanceMetres > 27).every(({ depthMetres }) => depthMetres === null),
    ).toBe(true);
  });

  test('runs in order of distance without a distance twice', () => {
    const distances = profile.map(({ distanceMetres }) => distanceMetres);
    expect(distances).toEqual([...new Set(distances)].sort((a, b) => a - b));
  });

  test('is empty for a peg that faces away from the water', () => {
    expect(depthProfile(pegStand(peg({ facingDegrees: 180 }), pond, REACH), surface)).toEqual([]);
  });
});
