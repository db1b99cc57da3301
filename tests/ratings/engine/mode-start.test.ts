import { describe, expect, it } from 'vitest';
import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import type { LatentModel, ModeStart } from '../../../src/ratings/engine/latent-model.ts';
import { factor } from './example-models.ts';
import { SMALL_VENUE, simulatedModel } from './simulated-model.ts';

const { model: whole, event } = simulatedModel({ ...SMALL_VENUE, seed: 7 });

/** The rows below the middle are known only to lie below it; those of later events are not known at all. */
function censored(isKnown: (row: number) => boolean): LatentModel {
  const { upper } = whole.observations;
  const middle = upper.toSorted()[upper.length >> 2]!;
  const isLow = (row: number) => upper[row]! < middle;
  return {
    ...whole,
    observations: {
      lower: upper.map((value, row) => (isKnown(row) && !isLow(row) ? value : Number.NEGATIVE_INFINITY)),
      upper: upper.map((value, row) => (isKnown(row) ? Math.max(value, middle) : Number.POSITIVE_INFINITY)),
    },
  };
}

const events = Math.max(...event) + 1;
const earlier = censored((row) => event[row]! < events - 3);
const later = censored(() => true);
const sds = fitLatentModel(later, { tolerance: 1e-3 });
const hold = { sd: sds.sd, residualSd: sds.residualSd };
const options = (mode: ModeStart) => ({ hold, start: { ...hold, mode } });
const asked = Array.from({ length: 6 }, (_, column) => ({ effects: [{ term: 'peg', column, weight: 1 }] }));

describe('a fit that looks for its mode from where another had its own', () => {
  it('ends where one ends that starts from nothing, with fewer factorisations', () => {
    const cold = fitLatentModel(later, { hold });
    const warm = fitLatentModel(later, options(fitLatentModel(earlier, { hold }).mode));
    expect(warm.factorisations).toBeLessThan(cold.factorisations);
    expect(warm.logMarginal).toBeCloseTo(cold.logMarginal, 8);
    for (const name of ['event', 'peg']) {
      const there = warm.effects(name);
      cold.effects(name).forEach((value, column) => {
        expect(there[column]!).toBeCloseTo(value, 8);
      });
    }
    const [of, other] = [cold.posterior(asked), warm.posterior(asked)];
    of.sd.forEach((sd, i) => {
      expect(other.sd[i]!).toBeCloseTo(sd, 8);
    });
  });

  it('starts from nothing where the other knew levels that this one has not', () => {
    const { mode } = fitLatentModel(later, { hold });
    const foreign = { effects: { ...mode.effects, peg: new Float64Array(1000).fill(9) }, fixed: {} };
    expect(fitLatentModel(later, options(foreign)).logMarginal).toBeCloseTo(
      fitLatentModel(later, { hold }).logMarginal,
      8,
    );
  });

  it('ends at no spread at once where another of the same rows had none, and leaves that where there is one', () => {
    // Pegs that are all alike: a column of each row by its number, which has nothing to do with its value.
    const rows = whole.observations.upper.length;
    const levels = Array.from({ length: rows }, (_, row) => row % 7);
    const none = { ...whole, terms: [...whole.terms, factor('nothing', 7, levels)] };
    const cold = fitLatentModel(none);
    expect(cold.sd.nothing).toBe(0);
    const warm = fitLatentModel(none, { start: cold });
    expect(warm.sd.nothing).toBe(0);
    expect(warm.iterations).toBeLessThan(cold.iterations);
    const wrong = fitLatentModel(whole, { start: { ...cold, sd: { ...cold.sd, peg: 0 } } });
    expect(wrong.sd.peg! / fitLatentModel(whole).sd.peg!).toBeCloseTo(1, 4);
  });
});
