import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Seeded chance: the same seed gives the same numbers on every machine. */
export interface Chance {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Uniform between two numbers. */
  between(low: number, high: number): number;
  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number;
  /** Standard normal, by the polar method (Marsaglia and Bray, 1964). */
  normal(): number;
  /** True with the given probability. */
  happens(probability: number): boolean;
  /** One item of a list that is not empty. */
  pick<Item>(items: readonly Item[]): Item;
  /** One item, with probability in proportion to its weight. */
  weighted<Item>(items: readonly (readonly [Item, number])[]): Item;
  /** The items in random order; the list given stays as it is. */
  shuffled<Item>(items: readonly Item[]): Item[];
  /** An independent stream for one named part, so that a draw more in one part changes no other. */
  apart(name: string): Chance;
}

/** Makes seeded chance from a whole number. */
export function seededChance(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  let spare: number | null = null;
  const uniform = () => uniformFloat64(generator);
  const normal = () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * factor;
      return x * factor;
    }
  };
  const whole = (low: number, high: number) => low + Math.floor(uniform() * (high - low + 1));
  return {
    uniform,
    normal,
    whole,
    between: (low, high) => low + uniform() * (high - low),
    happens: (probability) => uniform() < probability,
    pick: (items) => items[whole(0, items.length - 1)]!,
    weighted: (items) => {
      const total = items.reduce((sum, [, weight]) => sum + weight, 0);
      let left = uniform() * total;
      for (const [item, weight] of items) {
        left -= weight;
        if (left < 0) return item;
      }
      return items[items.length - 1]![0];
    },
    shuffled: (items) => {
      const order = [...items];
      for (let i = order.length - 1; i > 0; i--) {
        const j = whole(0, i);
        [order[i], order[j]] = [order[j]!, order[i]!];
      }
      return order;
    },
    apart: (name) => seededChance(mixedSeed(seed, name)),
  };
}

/** FNV-1a over the name (Fowler, Noll and Vo), begun at the seed. */
function mixedSeed(seed: number, name: string): number {
  let hash = (0x811c9dc5 ^ seed) >>> 0;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193) >>> 0;
  return hash | 0;
}
