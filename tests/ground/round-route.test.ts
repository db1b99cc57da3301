import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { improvedRoute } from '../../src/ground/improved-route.ts';
import { type DistanceTable, roundRoute, routeLength } from '../../src/ground/round-route.ts';

type Spot = readonly [number, number];

function tableOf(spots: readonly Spot[]): DistanceTable {
  const size = spots.length;
  const metres = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++)
      metres[i * size + j] = Math.hypot(spots[i]![0] - spots[j]![0], spots[i]![1] - spots[j]![1]);
  }
  return { size, metres };
}

/** Pegs evenly along a round bank, in an order that tells nothing. */
function roundBank(pegs: number): Spot[] {
  return Array.from({ length: pegs }, (_, index): Spot => {
    const angle = (2 * Math.PI * ((index * 7) % pegs)) / pegs;
    return [100 * Math.cos(angle), 100 * Math.sin(angle)];
  });
}

const spots = (least: number, most: number) =>
  fc.array(fc.tuple(fc.integer({ max: 500, min: 0 }), fc.integer({ max: 500, min: 0 })), {
    minLength: least,
    maxLength: most,
  });

describe('the round', () => {
  it('has nothing to walk with no peg and goes there and back with one', () => {
    expect(roundRoute(tableOf([]), true)).toEqual({ order: [], lengthMetres: 0, isProven: true });
    expect(roundRoute(tableOf([[0, 0]]), true)).toEqual({ order: [0], lengthMetres: 0, isProven: true });
    expect(
      roundRoute(
        tableOf([
          [0, 0],
          [3, 4],
        ]),
        true,
      ).lengthMetres,
    ).toBe(10);
    expect(
      roundRoute(
        tableOf([
          [0, 0],
          [3, 4],
        ]),
        false,
      ).lengthMetres,
    ).toBe(5);
  });

  it('follows a round bank peg by peg, few or many', () => {
    for (const pegs of [13, 60, 150]) {
      const chord = 200 * Math.sin(Math.PI / pegs);
      expect(roundRoute(tableOf(roundBank(pegs)), true).lengthMetres).toBeCloseTo(pegs * chord, 6);
      expect(roundRoute(tableOf(roundBank(pegs)), false).lengthMetres).toBeCloseTo((pegs - 1) * chord, 6);
    }
  });

  it('visits pegs that stand on one spot', () => {
    const route = roundRoute(
      tableOf([
        [0, 0],
        [5, 5],
        [5, 5],
        [0, 0],
      ]),
      true,
    );
    expect([...route.order].sort()).toEqual([0, 1, 2, 3]);
    expect(route.lengthMetres).toBeCloseTo(2 * Math.hypot(5, 5), 9);
  });

  it('is the same on every run', () => {
    const table = tableOf(roundBank(40).map(([x, y], index): Spot => [x + (index % 5) * 9, y]));
    expect(roundRoute(table, true, 3)).toEqual(roundRoute(table, true, 3));
  });
});

it('is never longer by weighing every order than by local search, and both visit every place once', () => {
  fc.assert(
    fc.property(spots(3, 9), fc.boolean(), (places, isClosed) => {
      const table = tableOf(places as Spot[]);
      const exact = roundRoute(table, isClosed);
      const order = improvedRoute(table, isClosed, xoroshiro128plus(1));
      expect([...order].sort((a, b) => a - b)).toEqual(places.map((_, index) => index));
      expect(exact.lengthMetres).toBeLessThanOrEqual(routeLength(table, order, isClosed) + 1e-9);
    }),
    { numRuns: 60 },
  );
});

it('leaves no two legs crossing in the plane', () => {
  fc.assert(
    fc.property(spots(18, 30), (places) => {
      const table = tableOf(places as Spot[]);
      const { order, lengthMetres } = roundRoute(table, true);
      for (let i = 1; i < order.length - 1; i++) {
        for (let j = i + 1; j < order.length; j++) {
          const turned = [...order.slice(0, i), ...order.slice(i, j + 1).reverse(), ...order.slice(j + 1)];
          expect(routeLength(table, turned, true)).toBeGreaterThanOrEqual(lengthMetres - 1e-6);
        }
      }
    }),
    { numRuns: 20 },
  );
});
