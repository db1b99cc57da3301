import { isInformative } from './bounds.ts';
import type { FitOptions, LatentModel, Observations, SparseRows } from './latent-model.ts';
import type { Parameters } from './latent-state.ts';
import type { FreeParameters } from './marginal-slope.ts';
import type { PreparedModel } from './prepared-model.ts';
import { dataSpread, leastSquaresOnQ } from './typical-values.ts';

/** An sd that moves no row by more than this share of the residual sd counts as zero. */
const MIN_SHARE = 1e-4;

/** The free parameters as one vector: log sds, log σ, β on Q; with its start and its bounds. */
export interface ParameterSpace {
  readonly free: FreeParameters;
  readonly start: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Scale of each free sd's weak prior; without priors it is not asked for. */
  readonly sdScales: readonly number[];
  /** Parameters at a point; a log sd at its lower bound means what `zeroAtBound` says: that small sd, or exactly zero. */
  at(point: Float64Array, zeroAtBound?: boolean): Parameters;
}

/** @throws {RangeError} where a held sd is negative, the held residual sd not positive, or only some fixed effects are held */
export function parameterSpace(model: LatentModel, prepared: PreparedModel, options: FitOptions): ParameterSpace {
  const { hold, start: given, weakPriors } = options;
  const ofData = dataSpread(prepared);
  // Data without any spread of their own must not set the search's bounds where a prior says better.
  const ofPrior = weakPriors?.residualMedian ?? ofData;
  const spread = Math.min(30 * ofPrior, Math.max(ofPrior / 30, ofData));
  const rowSizes = model.terms.map(({ rows }) => typicalRowSize(model.observations, rows));
  const heldSds = model.terms.map(
    ({ name }, t) => hold?.sd?.[name] ?? (rowSizes[t] === 0 && !weakPriors ? 0 : undefined),
  );
  for (const sd of heldSds) {
    if (sd !== undefined && !(sd >= 0 && Number.isFinite(sd))) throw new RangeError(`an sd cannot be held at ${sd}`);
  }
  const heldResidual = hold?.residualSd;
  if (heldResidual !== undefined && !(heldResidual > 0 && Number.isFinite(heldResidual))) {
    throw new RangeError(`the residual sd cannot be held at ${heldResidual}`);
  }
  const isMaximised = prepared.fixedFrom < 0;
  const heldFixed = isMaximised ? heldOnQ(model, prepared, hold?.fixed) : undefined;
  const free: FreeParameters = {
    terms: model.terms.map((_, t) => t).filter((t) => heldSds[t] === undefined),
    isResidualFree: heldResidual === undefined,
    fixed: isMaximised && heldFixed === undefined ? prepared.fixed.q.map((_, k) => k) : [],
  };
  const residualStart = given?.residualSd ?? 0.7 * spread;
  const least = free.terms.map((t) => Math.log((MIN_SHARE * (heldResidual ?? 0.7 * spread)) / (rowSizes[t]! || 1)));
  const start = free.terms.map((t, i) => {
    const usual = (0.5 * spread) / (Math.sqrt(model.terms.length) * (rowSizes[t]! || 1));
    const known = given?.sd[model.terms[t]!.name];
    // Nearly nothing is farther from nothing, in the variances' own sds, than the bound itself. Averaged over, no sd ends there.
    if (known === 0 && options.variances !== 'integrated') return least[i]!;
    return Math.max(least[i]! + 1, Math.log(known ?? usual));
  });
  // Rows that are all alike would take the scatter to nothing, beside which a held sd no longer factors; a prior knows better.
  const leastLogResidual =
    weakPriors === undefined ? Math.log(Math.min(ofData, spread)) - 14 : Math.log(weakPriors.residualMedian) - 9;
  const fixedStart = leastSquaresOnQ(prepared);
  const residual = free.isResidualFree ? [Math.log(residualStart)] : [];
  const fixed = free.fixed.map((k) => fixedStart[k]!);
  const unbounded = free.fixed.map(() => Number.POSITIVE_INFINITY);
  return {
    free,
    start: Float64Array.from([...start, ...residual, ...fixed]),
    lower: Float64Array.from([...least, ...residual.map(() => leastLogResidual), ...unbounded.map((b) => -b)]),
    upper: Float64Array.from([
      ...free.terms.map((t) => Math.log(Math.max(ofData, spread) / (rowSizes[t]! || 1)) + 7),
      ...residual.map(() => Math.log(Math.max(ofData, spread)) + 7),
      ...unbounded,
    ]),
    sdScales: free.terms.map(
      (t) => weakPriors?.sdScaleOf?.[model.terms[t]!.name] ?? weakPriors?.sdScale ?? Number.POSITIVE_INFINITY,
    ),
    at(point, zeroAtBound = false) {
      const sds = Float64Array.from(heldSds, (sd) => sd ?? 0);
      free.terms.forEach((t, i) => {
        sds[t] = zeroAtBound && point[i]! <= least[i]! + 0.1 ? 0 : Math.exp(point[i]!);
      });
      const first = free.terms.length + (free.isResidualFree ? 1 : 0);
      return {
        sds,
        residualSd: free.isResidualFree ? Math.exp(point[free.terms.length]!) : (heldResidual ?? 1),
        fixed: heldFixed ?? point.slice(first),
      };
    },
  };
}

/** Root mean square, over rows that tell something and that the term touches, of the row's length: what an sd of 1 does to one. */
function typicalRowSize({ lower, upper }: Observations, { rowStart, weight }: SparseRows): number {
  let touched = 0;
  let sum = 0;
  for (let i = 0; i < lower.length; i++) {
    if (!isInformative(lower[i]!, upper[i]!)) continue;
    let square = 0;
    for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++) square += weight[k]! ** 2;
    sum += square;
    if (square > 0) touched++;
  }
  return touched === 0 ? 0 : Math.sqrt(sum / touched);
}

function heldOnQ(
  model: LatentModel,
  { fixed }: PreparedModel,
  held: Readonly<Record<string, number>> | undefined,
): Float64Array | undefined {
  if (held === undefined) return undefined;
  const beta = model.fixed.map(({ name }) => {
    const value = held[name];
    if (value === undefined) throw new RangeError(`fixed effects are held all or none: ${name} has no value`);
    return value;
  });
  return Float64Array.from(fixed.r, (row) => row.reduce((sum, r, j) => sum + r * beta[fixed.kept[j]!]!, 0));
}
