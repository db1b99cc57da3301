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
  let best = nearestFirst(table);
  let bestLength = improveInPlace(table, best, isClosed);
  const restarts = Math.ceil(RESTART_WORK / table.size);
  for (let restart = 0; restart < restarts; restart++) {
    const order = doubleBridge(best, random);
    const length = improveInPlace(table, order, isClosed);
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

/** Improves until no single change shortens the walk; place 0 stays first. Returns the length. */
function improveInPlace(table: DistanceTable, order: number[], isClosed: boolean): number {
  const { size, metres } = table;
  /** Distance between what stands at two steps; behind the last step lies the start, or nothing. */
  const step = (i: number, j: number): number => {
    if (j < size) return metres[order[i]! * size + order[j]!]!;
    return isClosed ? metres[order[i]! * size + order[0]!]! : 0;
  };
  let improved = true;
  while (improved) improved = turnStretches(order, step) || moveRuns(order, step);
  let length = 0;
  for (let i = 1; i <= size; i++) length += step(i - 1, i);
  return length;
}

type Step = (i: number, j: number) => number;

function turnStretches(order: number[], step: Step): boolean {
  let improved = false;
  for (let i = 1; i < order.length - 1; i++) {
    for (let j = i + 1; j < order.length; j++) {
      const change = step(i - 1, j) + step(i, j + 1) - step(i - 1, i) - step(j, j + 1);
      if (change < -1e-9) {
        turnInPlace(order, i, j);
        improved = true;
      }
    }
  }
  return improved;
}

/** Moves a run of places to between two others, as it is or turned round. */
function moveRuns(order: number[], step: Step): boolean {
  let improved = false;
  for (let run = 1; run <= LONGEST_MOVED_RUN; run++) {
    for (let i = 1; i + run <= order.length; i++) {
      const end = i + run - 1;
      const gain = step(i - 1, i) + step(end, end + 1) - step(i - 1, end + 1);
      for (let to = 0; to < order.length; to++) {
        if (to >= i - 1 && to <= end) continue;
        const opened = step(to, to + 1);
        const straight = step(to, i) + step(end, to + 1) - opened;
        const turned = step(to, end) + step(i, to + 1) - opened;
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
