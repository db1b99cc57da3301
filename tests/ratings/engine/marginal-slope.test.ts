import { describe, expect, it } from 'vitest';
import { parameterSpace } from '../../../src/ratings/engine/free-parameters.ts';
import type { FitOptions, LatentModel, WeakPriors } from '../../../src/ratings/engine/latent-model.ts';
import { latentState } from '../../../src/ratings/engine/latent-state.ts';
import { objectiveAt, type Search, slopeAt } from '../../../src/ratings/engine/marginal-search.ts';
import { prepareModel } from '../../../src/ratings/engine/prepared-model.ts';
import { probedVariancesInPlace } from '../../../src/ratings/engine/probe-variances.ts';
import { mixedModel } from './example-models.ts';

const PRIORS: WeakPriors = { sdScale: 1, residualMedian: 0.6, residualLogSd: 0.7, fixedSpread: 5 };

const MIXED = mixedModel();
/** Every row known exactly, over two factors. */
const KNOWN_ROWS: LatentModel = {
  ...MIXED,
  observations: knownRows(MIXED.observations),
  terms: MIXED.terms.slice(0, 2),
};

function knownRows({ lower, upper }: LatentModel['observations']): LatentModel['observations'] {
  const y = lower.map((value, i) => (Number.isFinite(value) ? value : upper[i]!));
  return { lower: y, upper: y };
}

/** @param sds of the terms, then of what is left. */
function denseInformation(model: LatentModel, sds: readonly number[]): number[] {
  const y = [...model.observations.lower];
  const rows = y.map((_, i) => i);
  const product = (a: number[][], b: number[][]) =>
    a.map((row) => b[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)));
  const transposed = (a: number[][]) => a[0]!.map((_, j) => a.map((row) => row[j]!));
  const ofTerms = model.terms.map(({ rows: { rowStart, column } }, t) => {
    const level = (i: number) => (rowStart[i + 1]! > rowStart[i]! ? column[rowStart[i]!]! : -1 - i);
    return rows.map((i) => rows.map((j) => (level(i) >= 0 && level(i) === level(j) ? sds[t]! ** 2 : 0)));
  });
  const left = rows.map((i) => rows.map((j) => (i === j ? sds.at(-1)! ** 2 : 0)));
  const parts = [...ofTerms, left];
  const inverse = inverted(rows.map((i) => rows.map((j) => parts.reduce((sum, part) => sum + part[i]![j]!, 0))));
  const x = rows.map((i) => model.fixed.map(({ values }) => values[i]!));
  const vx = product(inverse, x);
  const hat = product(product(vx, inverted(product(transposed(x), vx))), transposed(vx));
  const p = rows.map((i) => rows.map((j) => inverse[i]![j]! - hat[i]![j]!));
  const py = product(
    p,
    y.map((value) => [value]),
  );
  // By a log sd, each part of the variance grows by twice itself.
  const working = parts.map((part) => product(part, py).map((row) => row.map((value) => 2 * value)));
  return working.flatMap((a) => working.map((b) => 0.5 * product(transposed(a), product(p, b))[0]![0]!));
}

/** Gauss and Jordan's elimination. */
function inverted(matrix: number[][]): number[][] {
  const n = matrix.length;
  const a = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let k = 0; k < n; k++) {
    const pivot = a.slice(k).reduce((best, row, i) => (Math.abs(row[k]!) > Math.abs(a[best]![k]!) ? i + k : best), k);
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    const by = a[k]![k]!;
    a[k] = a[k]!.map((value) => value / by);
    a.forEach((row, i) => {
      if (i !== k) a[i] = row.map((value, j) => value - row[k]! * a[k]![j]!);
    });
  }
  return a.map((row) => row.slice(n));
}

function searchOf(options: FitOptions, isByLog = false, model: LatentModel = MIXED): Search {
  const prepared = prepareModel(model, options.fixedEffects !== 'maximised');
  return {
    state: latentState(prepared, 1, options.weakPriors),
    space: parameterSpace(model, prepared, options),
    options,
    isByLog,
    isLarge: false,
    modeTolerance: { gain: 1e-20, staleGain: 0 },
    variances: {
      trace: new Float64Array(model.terms.length),
      fixedTrace: 0,
      leverage: new Float64Array(prepared.rows),
    },
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

  // Gilmour, Thompson and Cullis, Biometrics 51, 1995: ½ yᵀ P Vᵢ P Vⱼ P y, here with every matrix written out in full.
  it('comes with the average information of restricted maximum likelihood where every row is known', () => {
    const search = searchOf({}, false, KNOWN_ROWS);
    const point = search.space.start.map((value, i) => value + 0.2 * Math.cos(i));
    objectiveAt(search, point);
    const { information } = slopeAt(search, point);
    const expected = denseInformation(KNOWN_ROWS, [...point].map(Math.exp));
    expect(information).toHaveLength(expected.length);
    expected.forEach((value, i) => {
      expect(information[i]! / value, `entry ${i}`).toBeCloseTo(1, 6);
    });
  });

  it('tells means and spreads apart: none of what is known of one is taken for the other', () => {
    const search = searchOf({ fixedEffects: 'maximised' });
    const point = search.space.start;
    objectiveAt(search, point);
    const { information } = slopeAt(search, point);
    const { fixed } = search.space.free;
    const spreads = point.length - fixed.length;
    expect(fixed.length).toBeGreaterThan(0);
    for (let a = spreads; a < point.length; a++) {
      for (let b = 0; b < spreads; b++) {
        expect([information[a * point.length + b], information[b * point.length + a]]).toEqual([0, 0]);
      }
      expect(information[a * point.length + a]).toBeGreaterThan(0);
    }
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
