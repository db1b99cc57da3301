import { describe, expect, it } from 'vitest';
import { type DistanceTable, roundRoute, routeLength } from '../../src/ground/round-route.ts';
import published from './data/tsplib.json' with { type: 'json' };

/**
 * Source: G. Reinelt, "TSPLIB - A Traveling Salesman Problem Library", ORSA Journal on Computing 3 (1991), and its 1995
 * documentation for the distance formulas and the optima. The optima of open walks were proved by dynamic programming in
 * a separate program and are kept in the same data file.
 */
type Instance = (typeof published.data_and_expected)[number] & {
  readonly optimal_open_path_from_node_1?: number;
};

/** How far above the published optimum a route may be: none where every order is weighed. */
const ALLOWED_ABOVE: Readonly<Record<string, number>> = { burma14: 0, ulysses16: 0, ulysses22: 0.01, berlin52: 0.03 };

function euclidean([x1, y1]: readonly number[], [x2, y2]: readonly number[]): number {
  return Math.floor(Math.hypot(x1! - x2!, y1! - y2!) + 0.5);
}

function geographical(a: readonly number[], b: readonly number[]): number {
  const radians = (angle: number): number => {
    const degrees = Math.trunc(angle);
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the library defines its distances with this figure
    return (3.141592 * (degrees + (5 * (angle - degrees)) / 3)) / 180;
  };
  const [lat1, lng1] = a.map(radians) as [number, number];
  const [lat2, lng2] = b.map(radians) as [number, number];
  const q1 = Math.cos(lng1 - lng2);
  const q2 = Math.cos(lat1 - lat2);
  const q3 = Math.cos(lat1 + lat2);
  return Math.trunc(6378.388 * Math.acos(((1 + q1) * q2 - (1 - q1) * q3) / 2) + 1);
}

function tableOf({ coordinates, distance }: Instance): DistanceTable {
  const between = distance === 'GEO' ? geographical : euclidean;
  const size = coordinates.length;
  const metres = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) metres[i * size + j] = i === j ? 0 : between(coordinates[i]!, coordinates[j]!);
  }
  return { size, metres };
}

const instances: readonly Instance[] = published.data_and_expected;

describe.each(instances)('$name', (instance) => {
  const table = tableOf(instance);
  const everyPlace = Array.from({ length: instance.n }, (_, index) => index);

  it('is measured as its authors measure it', () => {
    expect(routeLength(table, everyPlace, true)).toBe(instance.identity_order_length);
    const best = instance.an_optimal_order.map((node) => node - 1);
    expect(routeLength(table, best, true)).toBe(instance.optimal_closed_tour);
  });

  it('is walked no further above the published optimum than allowed, and never below it', () => {
    const route = roundRoute(table, true);
    expect([...route.order].sort((a, b) => a - b)).toEqual(everyPlace);
    expect(route.order[0]).toBe(0);
    expect(route.lengthMetres).toBeGreaterThanOrEqual(instance.optimal_closed_tour);
    const above = route.lengthMetres / instance.optimal_closed_tour - 1;
    expect(above).toBeLessThanOrEqual(ALLOWED_ABOVE[instance.name]!);
  });
});

it.each(instances.filter((instance) => instance.optimal_open_path_from_node_1 !== undefined))(
  '$name is walked one way at the proved optimum',
  (instance) => {
    const route = roundRoute(tableOf(instance), false);
    expect(route).toMatchObject({ lengthMetres: instance.optimal_open_path_from_node_1, isProven: true });
  },
);
