import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MapPath } from '../../../src/domain/map.ts';
import { pathDistancesMetres } from '../../../src/ground/walk/path-distances.ts';
import { spot } from '../example-pond.ts';

const path = (id: string, ...points: readonly (readonly [number, number])[]): MapPath => ({
  id,
  line: points.map(([x, y]) => spot(x, y)),
});

/** Walking distance between two places on the paths, to the decimetre. */
function walk(
  paths: readonly MapPath[],
  from: readonly [number, number],
  to: readonly [number, number],
): number | null {
  const metres = pathDistancesMetres({ paths }, [spot(...from), spot(...to)])[0]![1]!;
  return metres === null ? null : Math.round(metres * 10) / 10;
}

describe('drawn paths', () => {
  test('that cross join at the crossing, where neither has a corner', () => {
    expect(walk([path('a', [-50, 0], [50, 0]), path('b', [0, -50], [0, 50])], [-50, 0], [0, 50])).toBe(100);
  });

  test('that share a corner join there', () => {
    expect(walk([path('a', [0, 0], [10, 0]), path('b', [10, 0], [10, 10])], [0, 0], [10, 10])).toBe(20);
  });

  test('join where one ends within 2 m of the middle of another, and the gap is walked', () => {
    expect(walk([path('a', [-50, 0], [50, 0]), path('b', [0, 1.5], [0, 50])], [-50, 0], [0, 50])).toBe(100);
  });

  test('do not join across a gap of 3 m', () => {
    expect(walk([path('a', [-50, 0], [50, 0]), path('b', [0, 3], [0, 50])], [-50, 0], [0, 50])).toBeNull();
  });

  test('do not join where they run side by side 1 m apart', () => {
    const low = path('low', [-50, 0], [0, 0], [50, 0]);
    const high = path('high', [-30, 1], [0, 1], [30, 1]);
    // The ends of the upper path come down to the lower; its middle corner does not.
    expect(walk([low, high], [-50, 0], [0, 1])).toBe(51);
    expect(walk([low, { ...high, line: [spot(-30, 5), spot(0, 1), spot(30, 5)] }], [-50, 0], [0, 1])).toBeNull();
  });

  test('close upon themselves where the end comes back to the beginning', () => {
    const round = path('round', [0, 0], [100, 0], [100, 100], [0, 100], [0, 1.5]);
    expect(walk([round], [0, 0], [0, 90])).toBe(90);
  });

  test('keep their length however closely their corners lie', () => {
    const fine = path('fine', ...Array.from({ length: 201 }, (_, i) => [i / 2, 0] as const));
    expect(walk([fine], [0, 0], [100, 0])).toBe(100);
  });

  test('in pieces leave what they do not join without a way', () => {
    const pieces = [path('a', [0, 0], [10, 0]), path('b', [500, 0], [510, 0])];
    expect(walk(pieces, [0, 0], [510, 0])).toBeNull();
    expect(walk(pieces, [500, 0], [510, 0])).toBe(10);
  });

  test('that double back, stand still or have one point do no harm', () => {
    const odd = [path('back', [0, 0], [50, 0], [0, 0]), path('still', [10, 0], [10, 0]), path('one', [20, 0])];
    expect(walk(odd, [0, 0], [50, 0])).toBe(50);
  });

  test('of none at all join nothing', () => {
    expect(walk([], [0, 0], [10, 0])).toBeNull();
    expect(pathDistancesMetres({ paths: [] }, [])).toEqual([]);
  });
});

describe('a place beside the paths', () => {
  const line = [path('a', [0, 0], [100, 0])];

  test('is joined to the nearest of them, and the step to it is walked', () => {
    expect(walk(line, [10, 5], [90, 7])).toBe(80 + 12);
  });

  test('is joined within 30 m and no farther', () => {
    expect(walk(line, [10, 29], [90, 0])).toBe(109);
    expect(walk(line, [10, 31], [90, 0])).toBeNull();
  });

  test('beside the same stretch as another is reached along it, not round by its ends', () => {
    expect(walk(line, [40, 0], [45, 0])).toBe(5);
  });

  test('is at no distance from itself, even where no path is near', () => {
    expect(pathDistancesMetres({ paths: line }, [spot(0, 900), spot(50, 0)])).toEqual([
      [0, null],
      [null, 0],
    ]);
  });
});

test('a way is as long there as back, and never shorter than the straight line', () => {
  const corner = fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 }));
  fc.assert(
    fc.property(fc.array(fc.array(corner, { minLength: 2, maxLength: 6 }), { minLength: 1, maxLength: 5 }), (drawn) => {
      const paths = drawn.map((corners, i) => path(`p${i}`, ...corners));
      const places = drawn.map(([first]) => first!);
      const metres = pathDistancesMetres(
        { paths },
        places.map(([x, y]) => spot(x, y)),
      );
      places.forEach(([x, y], i) => {
        places.forEach(([u, v], j) => {
          const there = metres[i]![j]!;
          const back = metres[j]![i]!;
          if (there === null) {
            expect(back).toBeNull();
            return;
          }
          expect(there).toBeCloseTo(back!, 6);
          expect(there).toBeGreaterThanOrEqual(Math.hypot(x - u, y - v) - 1e-3);
        });
      });
    }),
    { numRuns: 100 },
  );
});
