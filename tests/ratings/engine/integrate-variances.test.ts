import { describe, expect, it } from 'vitest';
import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import type { LatentModel, WeakPriors } from '../../../src/ratings/engine/latent-model.ts';
import { factor } from './example-models.ts';
import { coverage, featureMonthWorths, pegMonthWorths, SMALL_VENUE, simulatedModel } from './simulated-model.ts';

const PRIORS: WeakPriors = { sdScale: 1, residualMedian: 0.6, residualLogSd: 0.7, fixedSpread: 5 };

/** Few groups, so that the data leave much open about their sd. */
function fewGroups(spread: number): LatentModel {
  const rows = Array.from({ length: 24 }, (_, i) => i);
  const y = rows.map((i) => spread * Math.sin(5 * (i % 6)) + 0.6 * Math.sin(12.9898 * i * i));
  return {
    observations: { lower: Float64Array.from(y, (v, i) => (i % 8 === 0 ? -Infinity : v)), upper: Float64Array.from(y) },
    fixed: [{ name: 'level', values: new Float64Array(rows.length).fill(1) }],
    terms: [
      factor(
        'group',
        6,
        rows.map((i) => i % 6),
      ),
    ],
  };
}

/** The same average by brute force: a fine grid over both log sds, each point fitted with its sds held. */
function byGrid(model: LatentModel): { mean: number[]; sd: number[] } {
  const combinations = Array.from({ length: 6 }, (_, column) => ({ effects: [{ term: 'group', column, weight: 1 }] }));
  const points: { log: number; mean: Float64Array; sd: Float64Array }[] = [];
  for (let a = -5; a <= 1.2; a += 0.1) {
    for (let b = -1.4; b <= 0.5; b += 0.1) {
      const sd = Math.exp(a);
      const residualSd = Math.exp(b);
      const fit = fitLatentModel(model, { weakPriors: PRIORS, hold: { sd: { group: sd }, residualSd } });
      const prior = -0.5 * sd * sd + a - 0.5 * ((b - Math.log(0.6)) / 0.7) ** 2;
      points.push({ log: fit.logMarginal + prior, ...fit.posterior(combinations) });
    }
  }
  const top = Math.max(...points.map(({ log }) => log));
  const weights = points.map(({ log }) => Math.exp(log - top));
  const total = weights.reduce((sum, w) => sum + w);
  const average = (value: (point: (typeof points)[number]) => number) =>
    points.reduce((sum, point, i) => sum + (weights[i]! / total) * value(point), 0);
  const mean = combinations.map((_, k) => average((point) => point.mean[k]!));
  const sd = combinations.map((_, k) => Math.sqrt(average((p) => p.sd[k]! ** 2 + p.mean[k]! ** 2) - mean[k]! ** 2));
  return { mean, sd };
}

describe('integrating over the variances', () => {
  it.each([
    ['well apart from zero', 0.8],
    ['hardly apart from zero', 0.15],
  ])('comes near a fine grid over the sds: groups %s', (_, spread) => {
    const model = fewGroups(spread);
    const exact = byGrid(model);
    const combinations = exact.mean.map((_mean, column) => ({ effects: [{ term: 'group', column, weight: 1 }] }));
    const { mean, sd } = fitLatentModel(model, { weakPriors: PRIORS, variances: 'integrated' }).posterior(combinations);
    exact.sd.forEach((expected, k) => {
      expect(Math.abs(mean[k]! - exact.mean[k]!)).toBeLessThan(0.15 * expected);
      expect(Math.abs(sd[k]! / expected - 1)).toBeLessThan(0.12);
    });
  });

  it('adds to the intervals of the mode what the variances leave open, no less and no more', () => {
    const model = fewGroups(0.8);
    const exact = byGrid(model);
    const combinations = exact.mean.map((_mean, column) => ({ effects: [{ term: 'group', column, weight: 1 }] }));
    const fit = fitLatentModel(model, { weakPriors: PRIORS, variances: 'integrated' });
    const held = fitLatentModel(model, { weakPriors: PRIORS, hold: { sd: fit.sd, residualSd: fit.residualSd } });
    const [here, mode] = [fit.posterior(combinations), held.posterior(combinations)];
    exact.sd.forEach((expected, k) => {
      const added = (sd: number) => sd ** 2 - mode.sd[k]! ** 2;
      // Three nodes an axis see between three fifths and all of what a fine grid does.
      expect(added(here.sd[k]!) / added(expected)).toBeGreaterThan(0.6);
      expect(added(here.sd[k]!) / added(expected)).toBeLessThan(1.05);
    });
  });

  it('gives wider intervals than the mode of the same posterior where groups are few', () => {
    const model = fewGroups(0.8);
    const combination = [{ effects: [{ term: 'group', column: 0, weight: 1 }] }];
    const fit = fitLatentModel(model, { weakPriors: PRIORS, variances: 'integrated' });
    const held = fitLatentModel(model, { weakPriors: PRIORS, hold: { sd: fit.sd, residualSd: fit.residualSd } });
    expect(fit.posterior(combination).sd[0]).toBeGreaterThan(held.posterior(combination).sd[0]!);
  });

  // Four venues of the twenty and more of the slow suite: enough to see a gross fault.
  it('covers about four truths in five with 80% intervals on venues drawn from the model', () => {
    const seeds = [1, 2, 3, 4];
    const shares = seeds.map((seed) => {
      const simulated = simulatedModel({
        ...SMALL_VENUE,
        seed,
        events: 40,
        pegs: 40,
        anglers: 60,
        field: 20,
        features: 4,
      });
      const fit = fitLatentModel(simulated.model, { weakPriors: PRIORS, variances: 'integrated' });
      const asked = [...pegMonthWorths(simulated), ...featureMonthWorths(simulated)];
      return coverage(asked, fit.posterior(asked.map(({ combination }) => combination)), 1.2815515655446004);
    });
    const mean = shares.reduce((sum, share) => sum + share) / seeds.length;
    expect(mean).toBeGreaterThan(0.72);
    expect(mean).toBeLessThan(0.88);
  });
});
