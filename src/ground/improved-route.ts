import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { DistanceTable } from './round-route.ts';

/** Restarts times places: more places, fewer restarts, so that a water of any size takes well under a second. */
const RESTART_WORK = 6000;
const LONGEST_MOVED_RUN = 3;

/**
 * A short walk by local search: the nearest place first, then turning stretches round (2-opt) and moving runs of up to
 * three places (or-opt) while that shortens it, then restarts from the best with four edges exchanged at random (the
 * double bridge of Martin, Otto and Felten, Complex Systems 5, 1991).
 */
export function improvedRoute(table: DistanceTable, isClosed: boolean, random: RandomGenerator): number[] {
  const { metres, behind } = withEnd(table, isClosed);
  let best = nearestFirst(table);
  let bestLength = improveInPlace(metres, best, behind);
  const restarts = Math.ceil(RESTART_WORK / table.size);
  for (let restart = 0; restart < restarts; restart++) {
    const order = doubleBridge(best, random);
    const length = improveInPlace(metres, order, behind);
    if (length < bestLength - 1e-9) {
      best = order;
      bestLength = length;
    }
  }
  return best;
}

function nearestFirst({ size, metres }: DistanceTable): number[] {
  const order = [0];
  const left = new Set(Array.from({ length: size - 1 }, (_, index) => index + 1));
  while (left.size > 0) {
    const row = order.at(-1)! * size;
    let nearest = -1;
    for (const place of left) if (nearest < 0 || metres[row + place]! < metres[row + nearest]!) nearest = place;
    order.push(nearest);
    left.delete(nearest);
  }
  return order;
}

/** Cuts the walk in four and swaps the middle two: a change that 2-opt and or-opt do not undo by themselves. */
function doubleBridge(order: readonly number[], random: RandomGenerator): number[] {
  const cuts = [0, 0, 0].map(() => uniformInt(random, 1, order.length - 1)).sort((a, b) => a - b) as [
    number,
    number,
    number,
  ];
  const [a, b, c] = cuts;
  return [...order.slice(0, a), ...order.slice(b, c), ...order.slice(a, b), ...order.slice(c)];
}

/** Distances with one more place, `size`, which is no way from anywhere: what lies behind the last place of a walk that is not closed. */
function withEnd({ size, metres }: DistanceTable, isClosed: boolean) {
  const extended = new Float64Array((size + 1) ** 2);
  for (let place = 0; place < size; place++) {
    extended.set(metres.subarray(place * size, (place + 1) * size), place * (size + 1));
  }
  return { metres: extended, behind: isClosed ? 0 : size };
}

/**
 * Improves until no single change shortens the walk; place 0 stays first. Returns the length.
 * @param metres as `withEnd` gives them
 */
function improveInPlace(metres: Float64Array, order: number[], behind: number): number {
  const width = order.length + 1;
  order.push(behind);
  let improved = true;
  while (improved) improved = turnStretches(metres, width, order) || moveRuns(metres, width, order);
  let length = 0;
  for (let i = 1; i < width; i++) length += metres[order[i - 1]! * width + order[i]!]!;
  order.pop();
  return length;
}

/** Of the walk and what lies behind it. */
function turnStretches(metres: Float64Array, width: number, order: number[]): boolean {
  let improved = false;
  for (let i = 1; i < width - 2; i++) {
    const before = order[i - 1]! * width;
    for (let j = i + 1; j < width - 1; j++) {
      const first = order[i]!;
      const last = order[j]!;
      const after = order[j + 1]!;
      const change =
        metres[before + last]! +
        metres[first * width + after]! -
        metres[before + first]! -
        metres[last * width + after]!;
      if (change < -1e-9) {
        turnInPlace(order, i, j);
        improved = true;
      }
    }
  }
  return improved;
}

/** Moves a run of places to between two others, as it is or turned round. */
function moveRuns(metres: Float64Array, width: number, order: number[]): boolean {
  let improved = false;
  for (let run = 1; run <= LONGEST_MOVED_RUN; run++) {
    for (let i = 1; i + run < width; i++) {
      const end = i + run - 1;
      const before = order[i - 1]! * width;
      const first = order[i]!;
      const last = order[end]!;
      const after = order[end + 1]!;
      const gain = metres[before + first]! + metres[last * width + after]! - metres[before + after]!;
      for (let to = 0; to < width - 1; to++) {
        if (to >= i - 1 && to <= end) continue;
        const from = order[to]! * width;
        const next = order[to + 1]!;
        const opened = metres[from + next]!;
        const straight = metres[from + first]! + metres[last * width + next]! - opened;
        const turned = metres[from + last]! + metres[first * width + next]! - opened;
        if (Math.min(straight, turned) >= gain - 1e-9) continue;
        const moved = order.splice(i, run);
        if (turned < straight) moved.reverse();
        order.splice(to < i ? to + 1 : to + 1 - run, 0, ...moved);
        improved = true;
        break;
      }
    }
  }
  return improved;
}

function turnInPlace(order: number[], from: number, to: number): void {
  for (let i = from, j = to; i < j; i++, j--) [order[i], order[j]] = [order[j]!, order[i]!];
}
