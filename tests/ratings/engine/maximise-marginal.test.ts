import { describe, expect, it } from 'vitest';
import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import { parameterSpace } from '../../../src/ratings/engine/free-parameters.ts';
import type { FitOptions, LatentModel } from '../../../src/ratings/engine/latent-model.ts';
import { latentState } from '../../../src/ratings/engine/latent-state.ts';
import { type Search, slopeAt } from '../../../src/ratings/engine/marginal-search.ts';
import { maximiseMarginal } from '../../../src/ratings/engine/maximise-marginal.ts';
import { prepareModel } from '../../../src/ratings/engine/prepared-model.ts';
import { SMALL_VENUE, simulatedModel } from './simulated-model.ts';

const PRIORS = { sdScale: 1, residualMedian: 0.6, residualLogSd: 0.7, fixedSpread: 5 };

/** A venue whose pegs are all alike, and whose lowest tenth of bags is known only to be low. */
function pegsAlike(seed: number): LatentModel {
  const { model } = simulatedModel({ ...SMALL_VENUE, seed, sd: { ...SMALL_VENUE.sd, peg: 0 } });
  const { lower: y } = model.observations;
  const bound = y.toSorted()[Math.floor(y.length / 10)]!;
  return {
    ...model,
    observations: {
      lower: y.map((value) => (value < bound ? Number.NEGATIVE_INFINITY : value)),
      upper: y.map((value) => Math.max(value, bound)),
    },
  };
}

function searchOf(model: LatentModel, isLarge: boolean, given: FitOptions = {}): Search {
  const options: FitOptions = { tolerance: 0.05, weakPriors: PRIORS, ...given };
  const prepared = prepareModel(model, true);
  return {
    state: latentState(prepared, 1, PRIORS),
    space: parameterSpace(model, prepared, options),
    options,
    isByLog: false,
    isLarge,
    modeTolerance: { gain: 1e-10, staleGain: 1e-7 },
    variances: {
      trace: new Float64Array(model.terms.length),
      fixedTrace: 0,
      leverage: new Float64Array(prepared.rows),
    },
  };
}

describe('a search along slopes that are estimated', () => {
  // Where a deviation goes to zero its slope is smaller than what the probes blur: with them alone the first of these took 703 factors.
  it.each([1, 8, 10])('asks for the true slope where they mislead, venue %i', (seed) => {
    const model = pegsAlike(seed);
    const probed = searchOf(model, true);
    const found = maximiseMarginal(probed);
    const exact = maximiseMarginal(searchOf(model, false));
    expect(found.stopped).toBe('converged');
    expect(probed.state.system.factorisations).toBeLessThan(24);
    expect(Math.abs(found.objective - exact.objective)).toBeLessThan(2e-3);
  });
});

describe('a search that is limited', () => {
  const search = searchOf(pegsAlike(1), true, { maximumIterations: 1 });
  const { stopped, point, information, isSettled, hasCovariance } = maximiseMarginal(search);
  const x = search.state.x.slice();

  it('stays where it stopped, and works out nothing more there', () => {
    expect({ stopped, isSettled, hasCovariance }).toEqual({
      stopped: 'iteration limit',
      isSettled: true,
      hasCovariance: false,
    });
  });

  it('works out the information there when it is asked for, from exact traces', () => {
    expect(information()).toEqual(slopeAt(search, point).information);
    expect(information()).toBe(information());
    expect(search.state.x).toEqual(x);
  });
});

it('a fit whose search was limited knows its covariance and its errors', () => {
  const model = pegsAlike(2);
  const limited = fitLatentModel(model, { weakPriors: PRIORS, maximumIterations: 1 });
  const { sd, residualSd } = limited;
  const held = fitLatentModel(model, { weakPriors: PRIORS, hold: { sd, residualSd } });
  const asked = [{ fixed: [{ name: 'level', weight: 1 }], effects: [{ term: 'peg', column: 3, weight: 1 }] }];
  expect(limited.stopped).toBe('iteration limit');
  expect(limited.posterior(asked).sd[0]).toBeCloseTo(held.posterior(asked).sd[0]!, 8);
  expect(limited.logSdError.residual).toBeGreaterThan(0.01);
  expect(limited.logSdError.residual).toBeLessThan(0.05);
});
