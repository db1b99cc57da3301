import { describe, expect, it } from 'vitest';
import { fitLatentModel } from '../../src/ratings/engine/fit-latent-model.ts';
import { pegMonthWorths, SMALL_VENUE, simulatedModel } from '../ratings/engine/simulated-model.ts';

/** 1,500 anglers and 160 pegs by month: more columns than the engine factors again and again without need. */
const simulated = simulatedModel({
  ...SMALL_VENUE,
  seed: 11,
  anglers: 1500,
  pegs: 160,
  events: 1600,
  field: 12,
  features: 8,
});

describe('a model of more than 1,200 columns', () => {
  const hurried = fitLatentModel(simulated.model);
  const thorough = fitLatentModel(simulated.model, {
    tolerance: 1e-6,
    start: { sd: hurried.sd, residualSd: hurried.residualSd },
  });

  it('is left within a twentieth of the variances own standard errors', () => {
    expect(hurried.stopped).toBe('converged');
    const { terms, residual } = thorough.logSdError;
    for (const [name, sd] of Object.entries(thorough.sd)) {
      expect(Math.abs(Math.log(hurried.sd[name]! / sd)), name).toBeLessThan(0.06 * terms[name]!);
    }
    expect(Math.abs(Math.log(hurried.residualSd / thorough.residualSd))).toBeLessThan(0.06 * residual);
    expect(Math.abs(hurried.logMarginal - thorough.logMarginal)).toBeLessThan(2e-3);
  });

  it('gives the same worth and intervals as when it is searched to the end', () => {
    const asked = pegMonthWorths(simulated).map(({ combination }) => combination);
    const one = hurried.posterior(asked);
    const other = thorough.posterior(asked);
    asked.forEach((_, i) => {
      expect(Math.abs(one.mean[i]! - other.mean[i]!)).toBeLessThan(0.02 * other.sd[i]!);
      expect(Math.abs(one.sd[i]! / other.sd[i]! - 1)).toBeLessThan(0.02);
    });
  });

  it('takes few factorisations, and is the same for the same seed', () => {
    expect(hurried.factorisations).toBeLessThanOrEqual(8);
    expect(fitLatentModel(simulated.model).sd).toEqual(hurried.sd);
  });
});
