import type { PlanePoint } from '../../ground/plane/plane-point.ts';
import { side } from '../../ground/plane/segment-distance.ts';

/** A side of a ring by its ends from west to east, upright ones from south to north. */
export interface Side {
  readonly west: PlanePoint;
  readonly east: PlanePoint;
}

/** Blocks are divided at this size: to find a place among some hundred is quick, and so is to move them. */
const MAX_IN_BLOCK = 256;

/** The sides a sweeping line cuts, from south to north, as blocks of their numbers. */
export class CutSides {
  readonly #sides: readonly Side[];
  readonly #count: number;
  readonly #blocks: number[][] = [[]];
  readonly #blockOf: (number[] | undefined)[];

  constructor(sides: readonly Side[], count: number) {
    this.#sides = sides;
    this.#count = count;
    this.#blockOf = new Array(sides.length);
  }

  /**
   * Adds a side that begins where the line is now.
   * @returns the sides next to it on the south and the north, and one that its beginning lies on, if there is one
   */
  add(i: number): readonly [number | undefined, number | undefined, number | undefined] {
    let touched: number | undefined;
    const isBelow = (j: number): boolean => {
      const order = this.#compare(i, j);
      if (order === null) touched = j;
      return (order ?? 0) > 0;
    };
    const blockIndex = Math.max(0, partition(this.#blocks, (block) => block.length === 0 || isBelow(block[0]!)) - 1);
    const block = this.#blocks[blockIndex]!;
    const place = partition(block, isBelow);
    block.splice(place, 0, i);
    this.#blockOf[i] = block;
    const next = this.#nextTo(blockIndex, place);
    if (block.length > MAX_IN_BLOCK) {
      const half = block.splice(MAX_IN_BLOCK / 2);
      for (const j of half) this.#blockOf[j] = half;
      this.#blocks.splice(blockIndex + 1, 0, half);
    }
    return [...next, touched];
  }

  /** Takes out a side that ends. Returns the two that are next to one another now. */
  remove(i: number): readonly [number | undefined, number | undefined] {
    const block = this.#blockOf[i]!;
    const blockIndex = this.#blocks.indexOf(block);
    const place = block.indexOf(i);
    const next = this.#nextTo(blockIndex, place);
    block.splice(place, 1);
    if (block.length === 0 && this.#blocks.length > 1) this.#blocks.splice(blockIndex, 1);
    return next;
  }

  #nextTo(blockIndex: number, place: number): readonly [number | undefined, number | undefined] {
    const block = this.#blocks[blockIndex]!;
    return [
      place > 0 ? block[place - 1] : this.#blocks[blockIndex - 1]?.at(-1),
      place + 1 < block.length ? block[place + 1] : this.#blocks[blockIndex + 1]?.[0],
    ];
  }

  /** Above 0 where the side `i`, which begins now, lies north of `j`; null where it begins on it. */
  #compare(i: number, j: number): number | null {
    const [a, b] = [this.#sides[i]!, this.#sides[j]!];
    const begins = side(b.west, b.east, a.west);
    if (begins !== 0) return begins;
    const isNeighbour = (i + 1) % this.#count === j || (j + 1) % this.#count === i;
    if (!isNeighbour) return null;
    return side(b.west, b.east, a.east) || i - j;
  }
}

/** How many of the first items hold the condition; those that hold it come first. */
function partition<T>(items: readonly T[], holds: (item: T) => boolean): number {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(items[middle]!)) low = middle + 1;
    else high = middle;
  }
  return low;
}
