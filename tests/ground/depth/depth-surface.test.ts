import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthSurface, NOT_PLUMBED_BEYOND_METRES } from '../../../src/ground/depth/depth-surface.ts';
import { waterPlane } from '../../../src/ground/water-plane.ts';
import { pondMap, rectangle } from '../example-pond.ts';

const pond = waterPlane(pondMap());
const at = (x: number, y: number, depthMetres: number) => ({ x, y, depthMetres });

/** Soundings every 5 m of a bed that falls evenly to 3 m in the middle of the pond. */
const valley = Array.from({ length: 19 }, (_, i) => -45 + 5 * i).flatMap((x) =>
  Array.from({ length: 11 }, (_, j) => -25 + 5 * j).map((y) => at(x, y, 3 * Math.min(1, (30 - Math.abs(y)) / 30))),
);

describe('a bed', () => {
  test('is none without a sounding', () => {
    expect(depthSurface(pond, [])).toBeNull();
  });

  test('has the water’s own area to the square centimetre, so that no triangle crosses the bank', () => {
    const bent = waterPlane(
      pondMap({
        outline: [
          ...rectangle(-50, -30, 50, 30).slice(0, 3),
          ...rectangle(-30, 20, -10, 10).slice(1, 2),
          ...rectangle(-50, -30, 50, 30).slice(3),
        ],
        islands: [{ id: 'isle', ring: rectangle(0, -8, 30, -6) }],
      }),
    );
    const surface = depthSurface(bent, [at(-20, -10, 2), at(20, 10, 3), at(15, -20, 1)])!;
    expect(surface.areaSquareMetres).toBeCloseTo(bent.areaSquareMetres, 4);
  });

  test('goes through its soundings and down to 0 at the bank', () => {
    const surface = depthSurface(pond, valley)!;
    for (const { x, y, depthMetres } of valley)
      expect(surface.depthAt({ x, y }).depthMetres).toBeCloseTo(depthMetres, 9);
    expect(surface.depthAt({ x: 0, y: -29.999 }).depthMetres).toBeCloseTo(0, 3);
    expect(surface.depthAt({ x: 0, y: -27.5 }).depthMetres).toBeCloseTo(0.25, 4);
  });

  test('is not plumbed farther than 10 m from every sounding, and says how far the nearest is', () => {
    const surface = depthSurface(pond, [at(0, 0, 2)])!;
    expect(surface.depthAt({ x: 0, y: NOT_PLUMBED_BEYOND_METRES - 0.1 }).depthMetres).not.toBeNull();
    expect(surface.depthAt({ x: 0, y: NOT_PLUMBED_BEYOND_METRES + 0.1 })).toEqual({
      depthMetres: null,
      nearestSoundingMetres: 10.1,
    });
    expect(surface.plumbedShare).toBeLessThan(0.2);
  });

  test('is not plumbed on triangles that know only the bank, however near a sounding is', () => {
    const narrow = waterPlane(pondMap({ outline: rectangle(-50, -2, 50, 2) }));
    const surface = depthSurface(narrow, [at(0, 0, 1)])!;
    expect(surface.depthAt({ x: 1, y: 0.2 }).depthMetres).toBeGreaterThan(0);
    expect(surface.depthAt({ x: 8, y: 0 })).toEqual({ depthMetres: null, nearestSoundingMetres: 8 });
  });

  test('is as deep at the edge as it was plumbed within 0.3 m of it', () => {
    const surface = depthSurface(pond, [...valley, at(0, -29.8, 0.8)])!;
    expect(surface.depthAt({ x: 0, y: -29.99 }).depthMetres).toBeCloseTo(0.8, 2);
    expect(surface.depthAt({ x: 20, y: -29.99 }).depthMetres).toBeCloseTo(0, 2);
  });

  test('is shaped by the margin depths of records, which plumb nothing around them', () => {
    const margin = [at(0, -29.9, 0.8), at(0, -29.5, 0.8)];
    const shaped = depthSurface(pond, valley, margin)!;
    expect(shaped.depthAt({ x: 0, y: -29.6 }).depthMetres).toBeCloseTo(0.8, 2);
    expect(shaped.depthAt({ x: 0, y: -29.6 }).nearestSoundingMetres).toBeCloseTo(4.6, 6);
    const apart = depthSurface(pond, [at(-40, 20, 2)], margin)!;
    expect(apart.depthAt({ x: 0, y: -28 }).depthMetres).toBeNull();
    expect(depthSurface(pond, [], margin)).toBeNull();
  });

  test('takes soundings in a crowd, on a line and on the corners of the outline', () => {
    const crowd = Array.from({ length: 40 }, (_, i) => at(0.11 * i, 0, 2));
    const surface = depthSurface(pond, [...crowd, at(-50, -30, 1), at(50, 30, 1), at(-49.9, -29.9, 1)])!;
    expect(surface.areaSquareMetres).toBeCloseTo(pond.areaSquareMetres, 4);
    expect(surface.depthAt({ x: 2, y: 0.01 }).depthMetres).toBeCloseTo(2, 1);
  });

  test('never lies deeper than its deepest sounding or above the water', () => {
    // To the centimetre, as soundings are written.
    const centimetres = (most: number) => fc.integer({ min: -100 * most, max: 100 * most }).map((value) => value / 100);
    const place = fc.record({ x: centimetres(49), y: centimetres(29) });
    const sounding = fc.record({ place, depthMetres: fc.double({ min: 0, max: 6, noNaN: true }) });
    fc.assert(
      fc.property(
        fc.array(sounding, { minLength: 1, maxLength: 30 }),
        fc.array(place, { minLength: 5, maxLength: 5 }),
        (soundings, places) => {
          const measured = soundings.map(({ place: { x, y }, depthMetres }) => at(x, y, depthMetres));
          const surface = depthSurface(pond, measured)!;
          expect(surface.areaSquareMetres).toBeCloseTo(pond.areaSquareMetres, 3);
          expect(surface.meanMetres).toBeLessThanOrEqual(surface.maximumMetres);
          for (const p of places) {
            const { depthMetres } = surface.depthAt(p);
            if (depthMetres === null) continue;
            expect(depthMetres).toBeGreaterThanOrEqual(-1e-6);
            expect(depthMetres).toBeLessThanOrEqual(surface.maximumMetres + 1e-6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('isobaths', () => {
  test('lie on their depth, and close around the middle of the pond', () => {
    const surface = depthSurface(pond, valley)!;
    expect(surface.isobaths.map(({ depthMetres }) => depthMetres)).toEqual([0.5, 1, 1.5, 2, 2.5]);
    for (const { depthMetres, lines } of surface.isobaths) {
      for (const line of lines) {
        expect(line[0]).toEqual(line[line.length - 1]);
        for (const p of line) expect(surface.depthAt(p).depthMetres).toBeCloseTo(depthMetres, 6);
      }
    }
  });

  test('are not drawn where the bed is not plumbed', () => {
    const surface = depthSurface(pond, [at(-45, 0, 2), at(45, 0, 2)])!;
    for (const line of surface.isobaths.flatMap(({ lines }) => lines)) {
      for (const { x } of line) expect(Math.abs(x)).toBeGreaterThan(20);
    }
  });
});
