import type { DistanceTable } from './round-route.ts';

/**
 * The shortest walk by dynamic programming: for every set of places and every last one of it, the shortest way there.
 * Time and memory double with each place, so this is for a handful (16 take some 50 ms and 4 MB).
 */
export function exactRoute({ size, metres }: DistanceTable, isClosed: boolean): number[] {
  const others = size - 1;
  if (others < 1) return size === 0 ? [] : [0];
  const sets = 1 << others;
  const best = new Float64Array(sets * others).fill(Number.POSITIVE_INFINITY);
  const before = new Int8Array(sets * others).fill(-1);
  for (let last = 0; last < others; last++) best[(1 << last) * others + last] = metres[last + 1]!;
  for (let set = 1; set < sets; set++) {
    for (let last = 0; last < others; last++) {
      const sofar = best[set * others + last]!;
      if ((set & (1 << last)) === 0 || sofar === Number.POSITIVE_INFINITY) continue;
      const row = (last + 1) * size + 1;
      for (let next = 0; next < others; next++) {
        if ((set & (1 << next)) !== 0) continue;
        const state = (set | (1 << next)) * others + next;
        const length = sofar + metres[row + next]!;
        if (length < best[state]!) {
          best[state] = length;
          before[state] = last;
        }
      }
    }
  }
  return traceBack(best, before, others, (last) => (isClosed ? metres[(last + 1) * size]! : 0));
}

function traceBack(best: Float64Array, before: Int8Array, others: number, wayHome: (last: number) => number): number[] {
  let set = (1 << others) - 1;
  let last = 0;
  for (let other = 1; other < others; other++) {
    const length = best[set * others + other]! + wayHome(other);
    if (length < best[set * others + last]! + wayHome(last)) last = other;
  }
  const order: number[] = [];
  while (last >= 0) {
    order.push(last + 1);
    const previous = before[set * others + last]!;
    set &= ~(1 << last);
    last = previous;
  }
  return [0, ...order.reverse()];
}
