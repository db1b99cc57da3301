import type { WeakPriors } from './latent-model.ts';
import { emptySystem, type LatentSystem, setScaleInPlace } from './latent-system.ts';
import type { PreparedModel } from './prepared-model.ts';
import { emptyRowLikelihood, type RowLikelihood } from './row-likelihood.ts';
import { leastSquaresOnQ } from './typical-values.ts';

/** The numbers a fit is about: sds of the terms in the model's order, the residual sd, and β on Q where it is maximised. */
export interface Parameters {
  readonly sds: Float64Array;
  readonly residualSd: number;
  readonly fixed: Float64Array;
}

/** Everything a fit works in, allocated once. */
export interface LatentState {
  readonly prepared: PreparedModel;
  readonly system: LatentSystem;
  readonly likelihood: RowLikelihood;
  residualSd: number;
  /** Of the last mode found. */
  logMarginal: number;
  /** Standardised effects: the current point of Newton's method, the mode when it is done. */
  readonly x: Float64Array;
  /** The effects they make. */
  readonly effects: Float64Array;
  /** Where the fixed effects on Q are held weakly, and where they start: least squares through the bounds. */
  readonly fixedCentre: Float64Array;
  readonly hasFixedPrior: boolean;
  /** Xβ where β is maximised; null where it is among the effects. */
  readonly offset: Float64Array | null;
  readonly predictor: Float64Array;
  /** Scratch, one value a row and one value an effect. */
  readonly rowScratch: Float64Array;
  readonly effectScratch: readonly [step: Float64Array, trial: Float64Array, trialEffects: Float64Array];
}

/** Keeps a flat fixed effect from running away when every row is censored; relative weight 1e-13 of the rows otherwise. */
const NEARLY_FLAT = 1e-13;

export function latentState(prepared: PreparedModel, spread: number, priors: WeakPriors | undefined): LatentState {
  const { rows, levels, columns, effects, fixedFrom, fixed } = prepared;
  // A column of Q has length 1 over n rows: fitted values of typical size s need a coefficient of s √n.
  const precision =
    priors === undefined ? NEARLY_FLAT / (spread * spread) : 1 / (Math.max(1, rows) * priors.fixedSpread ** 2);
  const system = emptySystem(prepared, precision);
  const fixedCentre = leastSquaresOnQ(prepared);
  const x = new Float64Array(levels + columns);
  if (fixedFrom >= 0) x.set(fixedCentre, levels + fixedFrom);
  return {
    prepared,
    system,
    likelihood: emptyRowLikelihood(rows),
    residualSd: 1,
    logMarginal: 0,
    x,
    effects: new Float64Array(levels + effects),
    fixedCentre,
    hasFixedPrior: priors !== undefined,
    offset: fixedFrom >= 0 || fixed.q.length === 0 ? null : new Float64Array(rows),
    predictor: new Float64Array(rows),
    rowScratch: new Float64Array(rows),
    effectScratch: [
      new Float64Array(levels + columns),
      new Float64Array(levels + columns),
      new Float64Array(levels + effects),
    ],
  };
}

/** Moves a state to other parameters; the mode is found by `findModeInPlace` afterwards, from where the effects stand. */
export function setParametersInPlace(state: LatentState, { sds, residualSd, fixed }: Parameters): void {
  const { offset, prepared, system } = state;
  setScaleInPlace(system, sds);
  state.residualSd = residualSd;
  if (offset === null) return;
  offset.fill(0);
  prepared.fixed.q.forEach((column, k) => {
    for (let i = 0; i < offset.length; i++) offset[i] = offset[i]! + fixed[k]! * column[i]!;
  });
}
