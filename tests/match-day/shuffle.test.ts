import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numbersFrom, sha256Hex } from '../../src/match-day/even-numbers.ts';
import { shuffled } from '../../src/match-day/shuffle.ts';

/** Every order of a few values, each once. */
function everyOrder(values: readonly string[]): string[] {
  if (values.length === 0) return [''];
  return values.flatMap((first, i) => everyOrder(values.toSpliced(i, 1)).map((rest) => first + rest));
}

/** Passed by chance once in a thousand, by degrees of freedom: tables of the chi-square distribution. */
const ONE_IN_A_THOUSAND: Readonly<Record<number, number>> = { 1: 10.83, 5: 20.52, 23: 49.73, 119: 173.6 };

describe('shuffled', () => {
  test.each([
    ['two', 'ab'],
    ['three', 'abc'],
    ['four', 'abcd'],
    ['five', 'abcde'],
  ])('100,000 shuffles of %s reach every order equally often', async (_, letters) => {
    const orders = everyOrder([...letters]);
    const seen = new Map(orders.map((order) => [order, 0]));
    const next = numbersFrom(`chi-square of ${letters}`);
    const shuffles = 100_000;
    for (let i = 0; i < shuffles; i++) {
      const order = (await shuffled([...letters], next)).join('');
      seen.set(order, seen.get(order)! + 1);
    }
    const expected = shuffles / orders.length;
    const chiSquare = [...seen.values()].reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    expect(seen.size).toBe(orders.length);
    expect(chiSquare).toBeLessThan(ONE_IN_A_THOUSAND[orders.length - 1]!);
  });

  test('a shuffle that swaps with any place is found out by the same test', async () => {
    // The usual slip: 27 equally likely ways over 6 orders.
    const next = numbersFrom('biased');
    const seen = new Map(everyOrder([...'abc']).map((order) => [order, 0]));
    for (let i = 0; i < 100_000; i++) {
      const order = [...'abc'];
      for (let k = 0; k < 3; k++) {
        const j = await next(3);
        [order[k], order[j]] = [order[j]!, order[k]!];
      }
      seen.set(order.join(''), seen.get(order.join(''))! + 1);
    }
    const chiSquare = [...seen.values()].reduce((sum, count) => sum + (count - 100_000 / 6) ** 2 / (100_000 / 6), 0);
    expect(chiSquare).toBeGreaterThan(1000);
  });

  test('keeps every value once and leaves the list it was given alone', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer()), fc.string(), async (values, seed) => {
        const order = await shuffled(Object.freeze([...values]), numbersFrom(seed));
        expect(order.toSorted((a, b) => a - b)).toEqual(values.toSorted((a, b) => a - b));
      }),
    );
  });
});

describe('numbersFrom', () => {
  test('passes over words that would favour small numbers', async () => {
    // Below 3·2³⁰ a bare remainder would give the lower third of the numbers half of all draws.
    const next = numbersFrom('rejection');
    const below = 3 * 2 ** 30;
    let low = 0;
    for (let i = 0; i < 3000; i++) if ((await next(below)) < 2 ** 30) low++;
    expect(low).toBeGreaterThan(3000 / 3 - 4 * Math.sqrt((3000 * 2) / 9));
    expect(low).toBeLessThan(3000 / 3 + 4 * Math.sqrt((3000 * 2) / 9));
  });

  test('refuses a number it cannot give', async () => {
    await expect(numbersFrom('x')(0)).rejects.toThrow('expected a whole number');
    await expect(numbersFrom('x')(2.5)).rejects.toThrow('found 2.5');
  });
});

describe('sha256Hex', () => {
  test('agrees with the published vectors', async () => {
    // FIPS 180-4 examples, NIST Computer Security Resource Center: SHA-256 of one block, of two blocks, and of nothing.
    expect(await sha256Hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(await sha256Hex('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    );
    expect(await sha256Hex('')).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855');
  });
});
