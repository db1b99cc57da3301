import { describe, expect, test } from 'vitest';
import { borderedTerm } from '../../src/ratings/bordered-term.ts';
import { fitLatentModel } from '../../src/ratings/engine/fit-latent-model.ts';
import type { LatentModel, LinearCombination } from '../../src/ratings/engine/latent-model.ts';
import { factorRows, sparseRows } from '../../src/ratings/engine/sparse-rows.ts';
import { LEVEL } from '../../src/ratings/rating-model.ts';
import { seededChance } from '../demo/chance.ts';

const ROWS = 600;
const PEGS = 20;
const chance = seededChance(7);
const pegs = Array.from({ length: ROWS }, (_, i) => i % PEGS);
/** A slope that goes with the peg, and one that changes from row to row. */
const slopes = pegs.map((peg) => [peg / PEGS - 0.5, chance.normal()]);
const values = Float64Array.from(
  pegs,
  (_, i) => 2 + 1.2 * slopes[i]![0]! + 0.4 * slopes[i]![1]! + 0.5 * chance.normal(),
);
const plain: LatentModel = {
  observations: { lower: values, upper: values },
  fixed: [{ name: LEVEL, values: new Float64Array(ROWS).fill(1) }],
  terms: [{ name: 'peg', columns: PEGS, rows: factorRows(pegs), prior: { kind: 'independent' } }],
};
const rows = sparseRows(slopes.map((row) => row.map((weight, column) => ({ column, weight }))));
const hold = { sd: { peg: 0.4 }, residualSd: 0.5 };

describe('borderedTerm', () => {
  const fit = fitLatentModel(plain, { hold });
  const term = borderedTerm(plain, fit, { columns: 2, rows }, 10);
  const whole = fitLatentModel(
    { ...plain, terms: [...plain.terms, { name: 'slope', columns: 2, rows, prior: { kind: 'independent' } }] },
    { hold: { sd: { ...hold.sd, slope: term.sd }, residualSd: hold.residualSd } },
  );
  const effects = whole.effects('slope');

  // The border averages over the sd of its effects, the model holds the best one.
  test('tells the effects as the model that holds them does', () => {
    expect(Math.abs(term.posterior([1, 0]).mean - effects[0]!)).toBeLessThan(0.1);
    expect(Math.abs(term.posterior([0, 1]).mean - effects[1]!)).toBeLessThan(0.003);
  });

  test('adds to a sum of the model’s own only what is left once that has made room', () => {
    const ofPeg = (peg: number): LinearCombination => ({ effects: [{ term: 'peg', column: peg, weight: 1 }] });
    for (const peg of [0, 7, 19]) {
      const own = fit.posterior([ofPeg(peg)]).mean[0]!;
      const [weights] = term.besides([ofPeg(peg)], [[peg / PEGS - 0.5, 0]]);
      const together = own + term.posterior(weights!).mean;
      const expected = whole.effects('peg')[peg]! + effects[0]! * (peg / PEGS - 0.5);
      expect(Math.abs(together - expected)).toBeLessThan(0.02);
    }
  });

  test('is asked for by what holds such effects, and not by scatter alone', () => {
    expect(2 * term.logGain).toBeGreaterThan(20);
    const scatter = Float64Array.from(values, () => 2 + 0.5 * chance.normal());
    const flat = { ...plain, observations: { lower: scatter, upper: scatter } };
    expect(2 * borderedTerm(flat, fitLatentModel(flat, { hold }), { columns: 2, rows }, 10).logGain).toBeLessThan(4);
  });
});
