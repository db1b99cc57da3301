import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type TruncatedNormal, truncatedNormalInPlace } from '../../../src/ratings/engine/truncated-normal.ts';

const empty = (): TruncatedNormal => ({ logProbability: 0, mean: 0, information: 0, thirdMoment: 0, fourthMoment: 0 });

/** Moments by the trapezium rule about the bound nearest to zero, where the density is largest. */
function byQuadrature(a: number, b: number): TruncatedNormal {
  const origin = a > 0 ? a : Math.min(b, 0);
  const reach = 40 / Math.max(1, Math.abs(origin));
  const from = Math.max(a, origin - reach);
  const to = Math.min(b, origin + reach);
  const steps = 200_000;
  const width = (to - from) / steps;
  const sums = [0, 0, 0, 0, 0];
  for (let i = 0; i <= steps; i++) {
    const x = from + i * width;
    const s = x - origin;
    let mass = width * Math.exp(-0.5 * (x * x - origin * origin)) * (i === 0 || i === steps ? 0.5 : 1);
    for (let k = 0; k <= 4; k++, mass *= s) sums[k] = sums[k]! + mass;
  }
  const [m0, m1, m2, m3, m4] = sums.map((sum) => sum / sums[0]!) as [number, number, number, number, number];
  void m0;
  return {
    logProbability: Math.log(sums[0]!) - 0.5 * origin * origin - 0.5 * Math.log(2 * Math.PI),
    mean: origin + m1,
    information: 1 - (m2 - m1 * m1),
    thirdMoment: m3 - 3 * m2 * m1 + 2 * m1 ** 3,
    fourthMoment: m4 - 4 * m3 * m1 + 6 * m2 * m1 * m1 - 3 * m1 ** 4,
  };
}

const OPEN = Number.POSITIVE_INFINITY;

describe('the normal cut to an interval', () => {
  it.each([
    [-OPEN, 0],
    [-OPEN, -1.99],
    [-OPEN, -2.01],
    [-OPEN, -20],
    [-OPEN, 3],
    [1, OPEN],
    [3, OPEN],
    [-1, 0.5],
    [-0.01, 0.01],
    [2, 3],
    [-3, -2.5],
    [25, 25.3],
    [25, 30],
    [-30, -29],
    [-1, 3],
    [-3, 1],
    [5, 8],
    [1.9, 9],
    [2, 4.1],
    [-8, 8],
    [0.5, 6.5],
  ])('has the moments of quadrature between %f and %f', (a, b) => {
    const cut = empty();
    truncatedNormalInPlace(cut, a, b);
    const expected = byQuadrature(a, b);
    for (const key of Object.keys(expected) as (keyof TruncatedNormal)[]) {
      expect(Math.abs(cut[key] - expected[key]), key).toBeLessThan(2e-8);
    }
  });

  it('goes on smoothly where one formula takes over from another', () => {
    for (const [a, b] of [
      [2, OPEN],
      [2, 4],
      [2, 4.5],
      [1, 3],
      [3, 5],
    ] as const) {
      const below = empty();
      const above = empty();
      truncatedNormalInPlace(below, a - 1e-9, b === OPEN ? b : b - 1e-9);
      truncatedNormalInPlace(above, a + 1e-9, b === OPEN ? b : b + 1e-9);
      for (const key of Object.keys(below) as (keyof TruncatedNormal)[]) {
        expect(Math.abs(above[key] - below[key]), `${key} at ${a}, ${b}`).toBeLessThan(1e-7);
      }
    }
  });

  it('mirrors: the interval turned about zero has the same even moments and opposite odd ones', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 1e-4, max: 60, noNaN: true }),
        (a, width) => {
          const one = empty();
          const other = empty();
          truncatedNormalInPlace(one, a, a + width);
          truncatedNormalInPlace(other, -a - width, -a);
          expect(other.mean).toBeCloseTo(-one.mean, 10);
          expect(other.information).toBeCloseTo(one.information, 10);
          expect(other.thirdMoment).toBeCloseTo(-one.thirdMoment, 10);
          expect(other.logProbability).toBeCloseTo(one.logProbability, 8);
        },
      ),
    );
  });

  it('never tells more than an exact row, nor less than nothing, and stays finite far beyond 38 sds', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (a, width) => {
          for (const [from, to] of [
            [a, a + width],
            [-OPEN, a],
            [a, OPEN],
          ] as const) {
            const cut = empty();
            truncatedNormalInPlace(cut, from, to);
            expect(Object.values(cut).every(Number.isFinite)).toBe(true);
            expect(cut.information).toBeGreaterThan(-1e-9);
            expect(cut.information).toBeLessThan(1 + 1e-9);
            expect(cut.mean).toBeGreaterThanOrEqual(from - 1e-9 * Math.abs(from));
            expect(cut.mean).toBeLessThanOrEqual(to + 1e-9 * Math.abs(to));
          }
        },
      ),
    );
  });

  it('tells nothing where both sides are open', () => {
    const cut = empty();
    truncatedNormalInPlace(cut, -OPEN, OPEN);
    expect(cut).toEqual({ logProbability: 0, mean: 0, information: 0, thirdMoment: 0, fourthMoment: 3 });
  });
});
