import { describe, expect, test } from 'vitest';
import { chancesToFrame } from '../../src/ratings/chance-to-frame.ts';
import { normalCdf } from '../../src/ratings/engine/normal-cdf.ts';

const pegs = (...logWorths: number[]) => logWorths.map((logWorth) => ({ logWorth, sd: 0.1 }));
const chancesOf = (at: ReturnType<typeof pegs>, ...rest: [Parameters<typeof chancesToFrame>[1], number, number]) =>
  chancesToFrame([at], ...rest)[0]!;
const even = pegs(...new Array<number>(20).fill(0));

describe('chancesToFrame', () => {
  test('is what a lottery gives where all pegs are alike', () => {
    for (const chance of chancesOf(even, { anglers: 15, places: 3 }, 0.65, 1)) {
      expect(chance).toBeCloseTo(3 / 15, 2);
    }
  });

  test('is what a lottery gives on the average of unlike pegs', () => {
    const unlike = pegs(...Array.from({ length: 24 }, (_, i) => Math.sin(i) / 2));
    const chances = chancesOf(unlike, { anglers: 24, places: 5 }, 0.65, 2);
    expect(chances.reduce((sum, chance) => sum + chance, 0) / 24).toBeCloseTo(5 / 24, 1.7);
  });

  test('rises with the worth', () => {
    const chances = chancesOf(pegs(-0.5, -0.1, 0, 0.1, 0.5), { anglers: 5, places: 1 }, 0.6, 3);
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances[4]! / chances[0]!).toBeGreaterThan(3);
  });

  test('nears certainty for a peg far above all others, and nothing for one far below', () => {
    const chances = chancesOf(pegs(9, 0, 0, 0, 0, -9), { anglers: 6, places: 2 }, 0.6, 4);
    expect(chances[0]).toBeGreaterThan(0.999);
    expect(chances[5]).toBeLessThan(0.001);
  });

  test('has no rival on the peg itself', () => {
    const [lesser, better] = chancesOf(pegs(0, 0.8), { anglers: 2, places: 1 }, 0.6, 6);
    // The other peg has the one rival: the exact chance is that of one normal bag above another.
    const exact = normalCdf(0.8 / (Math.SQRT2 * Math.hypot(0.1, 0.6)));
    expect(better).toBeCloseTo(exact, 1.5);
    expect(lesser).toBeCloseTo(1 - exact, 1.5);
  });

  test('is 1 where there is a place for everyone', () => {
    expect(chancesOf(pegs(0, 0.3), { anglers: 2, places: 2 }, 0.6, 5)).toEqual([1, 1]);
    expect(chancesOf(pegs(0), { anglers: 12, places: 2 }, 0.6, 5)).toEqual([1]);
  });

  test('is the same again for the same seed', () => {
    const field = { anglers: 12, places: 3 };
    expect(chancesOf(even, field, 0.6, 9)).toEqual(chancesOf(even, field, 0.6, 9));
    expect(chancesOf(even, field, 0.6, 10)).not.toEqual(chancesOf(even, field, 0.6, 9));
  });

  test('gives months the luck of one draw: alike where their worth is, and each as if it were asked for alone', () => {
    const field = { anglers: 12, places: 3 };
    const unlike = pegs(...Array.from({ length: 20 }, (_, i) => Math.cos(i) / 2));
    const [first, other, again] = chancesToFrame([unlike, even, unlike], field, 0.6, 9);
    expect(again).toEqual(first);
    expect(other).not.toEqual(first);
    expect(other).toEqual(chancesOf(even, field, 0.6, 9));
  });
});
