import { expect, it } from 'vitest';
import { parameterSpace } from '../../../src/ratings/engine/free-parameters.ts';
import type { FitOptions } from '../../../src/ratings/engine/latent-model.ts';
import { latentState, setParametersInPlace } from '../../../src/ratings/engine/latent-state.ts';
import { modeShift } from '../../../src/ratings/engine/mode-shift.ts';
import { findModeInPlace } from '../../../src/ratings/engine/posterior-mode.ts';
import { prepareModel } from '../../../src/ratings/engine/prepared-model.ts';
import { mixedModel } from './example-models.ts';

const FINE = { gain: 1e-20, staleGain: 0 };

// The outside truth is the search itself: central differences of modes that were found to all digits.
it.each([
  ['fixed effects integrated', {}],
  ['fixed effects maximised', { fixedEffects: 'maximised' }],
  ['the scatter held', { hold: { residualSd: 0.7 } }],
] as const)('the mode moves as differences of modes show: %s', (_, options: FitOptions) => {
  const model = mixedModel();
  const prepared = prepareModel(model, options.fixedEffects !== 'maximised');
  const space = parameterSpace(model, prepared, options);
  const state = latentState(prepared, 1, undefined);
  const modeAt = (point: Float64Array) => {
    setParametersInPlace(state, space.at(point));
    findModeInPlace(state, FINE);
    return state.x.slice();
  };
  const point = space.start.map((value, i) => value + 0.1 * Math.sin(i + 1));
  const step = point.map((_value, i) => Math.cos(3 * i));
  const along = (length: number) => modeAt(point.map((value, i) => value + length * step[i]!));
  modeAt(point);
  const shift = modeShift(state, space.free, step);
  const h = 1e-3;
  const [ahead, behind] = [along(h), along(-h)];
  const [further, back] = [along(2 * h), along(-2 * h)];
  shift.forEach((value, i) => {
    const difference = (8 * (ahead[i]! - behind[i]!) - (further[i]! - back[i]!)) / (12 * h);
    expect(Math.abs(value - difference), `effect ${i}`).toBeLessThan(1e-6);
  });
  expect(Math.max(...shift.map(Math.abs))).toBeGreaterThan(0.1);
});
