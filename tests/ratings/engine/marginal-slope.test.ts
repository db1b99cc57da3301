import { describe, expect, it } from 'vitest';
import { parameterSpace } from '../../../src/ratings/engine/free-parameters.ts';
import type { FitOptions, WeakPriors } from '../../../src/ratings/engine/latent-model.ts';
import { latentState } from '../../../src/ratings/engine/latent-state.ts';
import { objectiveAt, type Search, slopeAt } from '../../../src/ratings/engine/marginal-search.ts';
import { prepareModel } from '../../../src/ratings/engine/prepared-model.ts';
import { probedVariancesInPlace } from '../../../src/ratings/engine/probe-variances.ts';
import { mixedModel } from './example-models.ts';

const PRIORS: WeakPriors = { sdScale: 1, residualMedian: 0.6, residualLogSd: 0.7, fixedSpread: 5 };

function searchOf(options: FitOptions, isByLog = false): Search {
  const model = mixedModel();
  const prepared = prepareModel(model, options.fixedEffects !== 'maximised');
  return {
    state: latentState(prepared, 1, options.weakPriors),
    space: parameterSpace(model, prepared, options),
    options,
    isByLog,
    isLarge: false,
    modeTolerance: { gain: 1e-20, staleGain: 0 },
    variances: { trace: new Float64Array(5), fixedTrace: 0, leverage: new Float64Array(prepared.rows) },
  };
}

describe('the slope of the log marginal likelihood', () => {
  it.each([
    ['fixed effects integrated', {}, false],
    ['fixed effects maximised', { fixedEffects: 'maximised' }, false],
    ['weak priors', { weakPriors: PRIORS }, false],
    ['weak priors, by log sds', { weakPriors: PRIORS }, true],
    ['some sds held', { hold: { sd: { event: 0.4, month: 0 }, residualSd: 0.7 } }, false],
  ] as const)('is that of finite differences: %s', (_, options, isByLog) => {
    const search = searchOf(options, isByLog);
    const point = search.space.start.map((value, i) => value + 0.1 * Math.sin(i + 1));
    objectiveAt(search, point);
    const { gradient } = slopeAt(search, point);
    point.forEach((_value, i) => {
      const beside = (step: number) =>
        objectiveAt(
          search,
          point.map((value, k) => value + (k === i ? step : 0)),
        ).objective;
      const h = 1e-4;
      const slope = (8 * (beside(h) - beside(-h)) - (beside(2 * h) - beside(-2 * h))) / (12 * h);
      expect(Math.abs(gradient[i]! - slope), `parameter ${i}`).toBeLessThan(1e-6 * (1 + Math.abs(slope)));
    });
  });

  it('is met on average by random probes, the same for the same seed', () => {
    const search = searchOf({});
    const point = search.space.start;
    objectiveAt(search, point);
    slopeAt(search, point);
    const exact = search.variances.trace.slice();
    const leverage = search.variances.leverage.slice();
    const sums = new Float64Array(exact.length);
    let ofLeverage = 0;
    const seeds = 60;
    for (let seed = 1; seed <= seeds; seed++) {
      probedVariancesInPlace(search.variances, search.state.system, seed);
      search.variances.trace.forEach((trace, t) => {
        sums[t] = sums[t]! + trace / seeds;
      });
      ofLeverage += search.variances.leverage.reduce((a, b) => a + b) / seeds;
    }
    sums.forEach((mean, t) => {
      expect(Math.abs(mean / exact[t]! - 1)).toBeLessThan(0.05);
    });
    const all = search.state.prepared.censored.reduce((sum, row) => sum + leverage[row]!, 0);
    expect(Math.abs(ofLeverage / all - 1)).toBeLessThan(0.05);
    probedVariancesInPlace(search.variances, search.state.system, 7);
    const once = search.variances.trace.slice();
    probedVariancesInPlace(search.variances, search.state.system, 7);
    expect(search.variances.trace).toEqual(once);
  });
});
