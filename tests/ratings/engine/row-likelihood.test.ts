import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emptyRowLikelihood,
  type RowLikelihood,
  rowLikelihoodInPlace,
  totalLogLikelihood,
} from '../../../src/ratings/engine/row-likelihood.ts';

function at(lower: number, upper: number, predictor: number, residualSd: number, blur?: number): RowLikelihood {
  const into = emptyRowLikelihood(1);
  const observations = {
    lower: Float64Array.of(lower),
    upper: Float64Array.of(upper),
    ...(blur === undefined ? {} : { blur: Float64Array.of(blur) }),
  };
  rowLikelihoodInPlace(into, observations, Float64Array.of(predictor), residualSd);
  return into;
}

const OPEN = Number.POSITIVE_INFINITY;
const KINDS = [
  ['exact', 0.4, 0.4, undefined],
  ['left-censored', -OPEN, 0.4, undefined],
  ['right-censored', 0.4, OPEN, undefined],
  ['interval-censored', -0.3, 0.9, undefined],
  ['left-censored by a blurred bound', -OPEN, 0.4, 0.8],
  ['interval-censored by blurred bounds', -0.3, 0.9, 0.3],
] as const;

describe.each(KINDS)('the log-likelihood of a row that is %s', (_, lower, upper, blur) => {
  it('has the derivatives that finite differences show, in the predictor and in log σ', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        (eta, sd) => {
          const h = 1e-5;
          const near = (found: number, expected: number) =>
            expect(Math.abs(found - expected)).toBeLessThan(2e-6 * (1 + Math.abs(expected)));
          const here = at(lower, upper, eta, sd, blur);
          const up = at(lower, upper, eta + h, sd, blur);
          const down = at(lower, upper, eta - h, sd, blur);
          near((up.total - down.total) / (2 * h), here.slope[0]!);
          near((down.slope[0]! - up.slope[0]!) / (2 * h), here.weight[0]!);
          near((up.weight[0]! - down.weight[0]!) / (2 * h), here.weightSlope[0]!);
          const wider = at(lower, upper, eta, sd * Math.exp(h), blur);
          const narrower = at(lower, upper, eta, sd * Math.exp(-h), blur);
          near((wider.total - narrower.total) / (2 * h), here.totalBySpread);
          near((wider.slope[0]! - narrower.slope[0]!) / (2 * h), here.slopeBySpread[0]!);
          near((wider.weight[0]! - narrower.weight[0]!) / (2 * h), here.weightBySpread[0]!);
        },
      ),
    );
  });

  it('is the same with and without its derivatives, and stays finite 38 sds and more away', () => {
    const observations = {
      lower: Float64Array.of(lower),
      upper: Float64Array.of(upper),
      ...(blur === undefined ? {} : { blur: Float64Array.of(blur) }),
    };
    for (const eta of [-1e5, -400, -38, -2, 0, 2, 38, 400, 1e5]) {
      const here = at(lower, upper, eta, 1, blur);
      expect(totalLogLikelihood(observations, Float64Array.of(eta), 1)).toBe(here.total);
      expect(Number.isFinite(here.total)).toBe(true);
      expect(here.weight[0]).toBeGreaterThanOrEqual(0);
      expect(here.weight[0]).toBeLessThanOrEqual(1 + 1e-9);
    }
  });
});

it('a blurred bound speaks as a sharp one does to a wider scatter', () => {
  const blurred = at(-OPEN, 0.4, 1.1, 0.6, 0.8);
  const wider = at(-OPEN, 0.4, 1.1, 1);
  expect([blurred.total, blurred.slope[0], blurred.weight[0]]).toEqual([wider.total, wider.slope[0], wider.weight[0]]);
});

it('a row with both sides open adds nothing', () => {
  const here = at(-OPEN, OPEN, 3, 0.7);
  expect([here.total, here.slope[0], here.weight[0], here.totalBySpread]).toEqual([0, 0, 0, 0]);
});
