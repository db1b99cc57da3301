import { describe, expect, it } from 'vitest';
import {
  covarianceInPlace,
  emptySystem,
  factorInPlace,
  setScaleInPlace,
  solveSystemInPlace,
} from '../../../src/ratings/engine/latent-system.ts';
import { allEffectsInPlace, predictorInPlace } from '../../../src/ratings/engine/linear-predictor.ts';
import { prepareModel } from '../../../src/ratings/engine/prepared-model.ts';
import { mixedModel } from './example-models.ts';

const SDS = [0.7, 0.3, 0.5, 0.25, 0.4];

function systemOf(sds: readonly number[] = SDS) {
  const prepared = prepareModel(mixedModel(), true);
  const system = emptySystem(prepared, 1e-3);
  setScaleInPlace(system, sds);
  const { lower, upper } = prepared.observations;
  // What is known exactly all weighs the same, as it does at any residual sd.
  const weight = lower.map((bound, i) => (bound === upper[i] ? 0.9 : 0.2 + ((i * 5) % 9) / 4));
  factorInPlace(system, weight);
  return { prepared, system, weight };
}

/** H written out, column by column, from the predictor of each standardised effect alone. */
function written({ prepared, system, weight }: ReturnType<typeof systemOf>): number[][] {
  const count = prepared.levels + prepared.columns;
  const columns = Array.from({ length: count }, (_, k) => {
    const x = new Float64Array(count);
    x[k] = 1;
    const u = new Float64Array(prepared.levels + prepared.effects);
    const predictor = new Float64Array(prepared.rows);
    allEffectsInPlace(u, system, x);
    predictorInPlace(predictor, system, u, null);
    return predictor;
  });
  return columns.map((a, i) =>
    columns.map((b, j) => {
      let sum = i !== j ? 0 : i >= count - 2 ? system.fixedPrecision : 1;
      for (let row = 0; row < weight.length; row++) sum += weight[row]! * a[row]! * b[row]!;
      return sum;
    }),
  );
}

describe('the system of a latent model', () => {
  it('eliminates the term with the most levels, and solves as the whole matrix does', () => {
    const made = systemOf();
    expect(made.prepared.blocks[made.prepared.eliminated]!.name).toBe('event');
    const h = written(made);
    const x = Float64Array.from(h, (_, i) => Math.sin(3 * i + 1));
    const solved = x.slice();
    solveSystemInPlace(made.system, solved);
    h.forEach((row, i) => {
      expect(row.reduce((sum, value, j) => sum + value * solved[j]!, 0)).toBeCloseTo(x[i]!, 11);
    });
  });

  it('has the determinant of the whole matrix', () => {
    const made = systemOf();
    const m = written(made);
    let logDeterminant = 0;
    for (let k = 0; k < m.length; k++) {
      logDeterminant += Math.log(m[k]![k]!);
      for (let i = k + 1; i < m.length; i++) {
        const share = m[i]![k]! / m[k]![k]!;
        for (let j = k; j < m.length; j++) m[i]![j] = m[i]![j]! - share * m[k]![j]!;
      }
    }
    expect(made.system.logDeterminant).toBeCloseTo(logDeterminant, 9);
  });

  it('gives effects the covariance that solving gives them', () => {
    const made = systemOf();
    const { prepared, system } = made;
    covarianceInPlace(system);
    const count = prepared.levels + prepared.columns;
    for (const effect of [0, 3, 6, 10, 25, 33]) {
      // The effect as a combination of standardised ones, found by asking each of them.
      const weights = Float64Array.from({ length: count }, (_, k) => {
        const x = new Float64Array(count);
        x[k] = 1;
        const u = new Float64Array(prepared.levels + prepared.effects);
        allEffectsInPlace(u, system, x);
        return u[prepared.levels + effect]!;
      });
      const solved = weights.slice();
      solveSystemInPlace(system, solved);
      const variance = weights.reduce((sum, w, k) => sum + w * solved[k]!, 0);
      expect(system.overEffects[effect * prepared.effects + effect]).toBeCloseTo(variance, 12);
    }
  });

  it('makes nothing special of an sd of zero', () => {
    const { system } = systemOf([0, 0.3, 0, 0, 0.4]);
    expect(Number.isFinite(system.logDeterminant)).toBe(true);
    covarianceInPlace(system);
    expect(system.overEffects.every(Number.isFinite)).toBe(true);
  });
});
