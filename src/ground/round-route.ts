import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { exactRoute } from './exact-route.ts';
import { improvedRoute } from './improved-route.ts';

/** Walking distances between places, row by row: `metres[from * size + to]`. Symmetric; place 0 is where the round starts. */
export interface DistanceTable {
  readonly size: number;
  readonly metres: Float64Array;
}

export interface RoundRoute {
  /** Every place once, place 0 first. */
  readonly order: readonly number[];
  /** Back to the start where the round is closed. */
  readonly lengthMetres: number;
  /** Whether it is known to be the shortest; else it is the shortest that was found. */
  readonly isProven: boolean;
}

/** Places up to which every order is weighed: 15 beside the start, half a million states. */
const EXACT_PLACES = 16;

/**
 * The shortest walk from place 0 over all others. Up to 16 places by dynamic programming over subsets (Bellman, J. ACM 9,
 * 1962; Held and Karp, J. SIAM 10, 1962); beyond that by 2-opt (Croes, Operations Research 6, 1958) and or-opt (Or, 1976)
 * with seeded restarts.
 * @param isClosed whether the walk ends where it began
 */
export function roundRoute(table: DistanceTable, isClosed: boolean, seed = 1): RoundRoute {
  const order =
    table.size <= EXACT_PLACES ? exactRoute(table, isClosed) : improvedRoute(table, isClosed, xoroshiro128plus(seed));
  return { order, lengthMetres: routeLength(table, order, isClosed), isProven: table.size <= EXACT_PLACES };
}

/** Length of a walk in the given order. */
export function routeLength({ size, metres }: DistanceTable, order: readonly number[], isClosed: boolean): number {
  let length = 0;
  for (let i = 1; i < order.length; i++) length += metres[order[i - 1]! * size + order[i]!]!;
  return isClosed && order.length > 1 ? length + metres[order.at(-1)! * size + order[0]!]! : length;
}
