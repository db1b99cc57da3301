import type { DnwLesson, DnwMechanism, DnwSilence } from './dnw-mechanism.ts';
import { HERMITE_RULE } from './engine/gauss-hermite.ts';
import type { LatentFit, LatentModel, LinearCombination } from './engine/latent-model.ts';
import { LOG_ROOT_TWO_PI, logNormalCdf } from './engine/normal-cdf.ts';
import { fitRatings, goOnFrom } from './fit-ratings.ts';
import { LEVEL } from './rating-model.ts';

/** A log as the lesson needs it: the model of all sessions, and which of its rows did not weigh. */
export interface DnwEvidence {
  readonly latent: LatentModel;
  /** Of every weighed bag of an event that lists all: its log over its event's middle. */
  readonly weighed: readonly number[];
  /** Of every DNW of such an event: its row, and its event's log middle. */
  readonly dnw: readonly { readonly row: number; readonly middle: number }[];
}

/** With fewer DNWs, or fewer weighed bags beside them, nothing is asked of the log. */
const MIN_DNW = 12;
const MIN_WEIGHED = 40;
/** Log likelihood by which the best blur must beat the worst: with less, any blur is as good as another. */
const MIN_GAIN = 2;
/** Blurs that are looked at, on the log scale of bags: from a sharp line to hardly any line. */
const BLURS = Array.from({ length: 25 }, (_, i) => 0.08 * (5 / 0.08) ** (i / 24));
const MAX_ROUNDS = 8;
/** Of the variances' own doubt: nearer moves no line by a hundredth of what ends the rounds. */
const NEAR = 0.01;

/**
 * Learns who does not weigh by maximum likelihood. What the DNWs would have weighed is known from the rest of the log, better
 * each round (expectation and maximisation: Dempster, Laird and Rubin, 1977, with the effects as what is missing): fit with the
 * mechanism held, then the best mechanism for that fit. Every round searches all blurs, so that no start decides, and the
 * shift that is best for a blur is found exactly, the likelihood being concave in it.
 * @param fit Of the same model with nothing said of the DNWs.
 * @returns The lesson, and the last fit with its model, whose standard deviations are near to those of a fit that follows.
 */
export function learnDnw(
  { latent, weighed, dnw }: DnwEvidence,
  fit: LatentFit,
): { readonly lesson: DnwLesson; readonly fit: LatentFit; readonly latent: LatentModel } {
  const nothing = (silence: DnwSilence) => ({ lesson: { mechanism: null, ...silence }, fit, latent });
  if (dnw.length < MIN_DNW) return nothing({ why: 'few-dnw', count: dnw.length });
  if (weighed.length < MIN_WEIGHED) return nothing({ why: 'few-weighed', count: weighed.length });
  const combinations = dnw.map(({ row }) => rowCombination(latent, row));
  const bags = binned(weighed);
  let current = fit;
  let bounded = latent;
  let best = bestMechanism(bags, unweighed(current, combinations, dnw), fit.residualSd);
  let last: readonly [number, number] | null = null;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    if (best.gain < MIN_GAIN) return nothing({ why: 'not-told' });
    bounded = dnwBounded(latent, dnw, best.mechanism);
    current = fitRatings(bounded, {
      variances: 'mode',
      start: goOnFrom(current),
      tolerance: NEAR,
      maximumIterations: 2,
    });
    const next = bestMechanism(bags, unweighed(current, combinations, dnw), current.residualSd);
    const step = [
      next.mechanism.shift - best.mechanism.shift,
      Math.log(next.mechanism.blur / best.mechanism.blur),
    ] as const;
    if (Math.abs(step[0]) < 0.02 && Math.abs(step[1]) < 0.03) return { lesson: next, fit: current, latent: bounded };
    best = { ...next, mechanism: ahead(next.mechanism, step, last) };
    last = step;
  }
  return { lesson: best, fit: current, latent: bounded };
}

/** Steps of a slow round shrink by a steady share: go where they lead (Aitken's extrapolation), within bounds. */
function ahead(
  { shift, blur }: DnwMechanism,
  step: readonly [number, number],
  last: readonly [number, number] | null,
): DnwMechanism {
  if (last === null) return { shift, blur };
  const further = step.map((value, i) => {
    const share = last[i] === 0 ? 0 : value / last[i]!;
    return share > 0 && share < 0.95 ? Math.min(3, share / (1 - share)) * value : 0;
  });
  return {
    shift: shift + further[0]!,
    blur: Math.min(BLURS.at(-1)!, Math.max(BLURS[0]!, blur * Math.exp(further[1]!))),
  };
}

/** The model with every DNW below its blurred bound; without a mechanism nothing is known of them. */
export function dnwBounded(latent: LatentModel, dnw: DnwEvidence['dnw'], mechanism: DnwMechanism | null): LatentModel {
  const { lower, upper, blur } = latent.observations;
  const bounds = { lower: lower.slice(), upper: upper.slice(), blur: blur?.slice() ?? new Float64Array(lower.length) };
  for (const { row, middle } of dnw) {
    bounds.lower[row] = Number.NEGATIVE_INFINITY;
    bounds.upper[row] = mechanism === null ? Number.POSITIVE_INFINITY : middle + mechanism.shift;
    bounds.blur[row] = mechanism?.blur ?? 0;
  }
  return { ...latent, observations: bounds };
}

function rowCombination({ terms }: LatentModel, row: number): LinearCombination {
  return {
    fixed: [{ name: LEVEL, weight: 1 }],
    effects: terms.flatMap(({ name, rows }) => {
      const first = rows.rowStart[row]!;
      return Array.from({ length: rows.rowStart[row + 1]! - first }, (_, k) => ({
        term: name,
        column: rows.column[first + k]!,
        weight: rows.weight[first + k]!,
      }));
    }),
  };
}

/** Where a DNW's own bag is expected, over its event's middle. */
interface Unweighed {
  readonly mean: number;
  readonly sd: number;
}

function unweighed(
  fit: LatentFit,
  combinations: readonly LinearCombination[],
  dnw: DnwEvidence['dnw'],
): readonly Unweighed[] {
  const { mean, sd } = fit.posterior(combinations);
  return dnw.map(({ middle }, i) => ({ mean: mean[i]! - middle, sd: sd[i]! }));
}

interface Bags {
  readonly at: readonly number[];
  readonly count: readonly number[];
}

/** Bags counted in steps of a fiftieth, a fifth of the least blur and less: as exact as it need be, and a tenth of the work. */
function binned(weighed: readonly number[]): Bags {
  const counts = new Map<number, number>();
  for (const value of weighed) counts.set(Math.round(value * 50), (counts.get(Math.round(value * 50)) ?? 0) + 1);
  const bins = [...counts].sort(([a], [b]) => a - b);
  return { at: bins.map(([bin]) => bin / 50), count: bins.map(([, count]) => count) };
}

interface Best {
  readonly mechanism: DnwMechanism;
  /** Log likelihood over that of the worst blur. */
  readonly gain: number;
}

function bestMechanism(bags: Bags, unknown: readonly Unweighed[], residualSd: number): Best {
  let shift = 0;
  const at = (blur: number) => {
    const found = bestShift(bags, unknown, residualSd, blur, shift);
    shift = found.shift;
    return found;
  };
  const looked = BLURS.map((blur) => ({ blur, ...at(blur) }));
  const worst = Math.min(...looked.map(({ value }) => value));
  const top = looked.reduce((best, each, i) => (each.value > looked[best]!.value ? i : best), 0);
  // Golden section between the neighbours of the best blur.
  let [low, high] = [Math.log(BLURS[Math.max(0, top - 1)]!), Math.log(BLURS[Math.min(24, top + 1)]!)];
  shift = looked[top]!.shift;
  const golden = (Math.sqrt(5) - 1) / 2;
  const valueAt = (logBlur: number) => at(Math.exp(logBlur)).value;
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [leftValue, rightValue] = [valueAt(left), valueAt(right)];
  for (let k = 0; k < 12; k++) {
    // The point that stays inside is the other of the two that follow: that ratio is what makes the section golden.
    if (leftValue > rightValue) {
      [high, right, rightValue] = [right, left, leftValue];
      left = high - golden * (high - low);
      leftValue = valueAt(left);
    } else {
      [low, left, leftValue] = [left, right, rightValue];
      right = low + golden * (high - low);
      rightValue = valueAt(right);
    }
  }
  const blur = Math.exp(0.5 * (low + high));
  const found = at(blur);
  return { mechanism: { shift: found.shift, blur }, gain: found.value - worst };
}

/** The shift at which the rows are most likely under a blur: Newton's method on a concave function, from where the last ended. */
function bestShift(
  { at, count }: Bags,
  unknown: readonly Unweighed[],
  residualSd: number,
  blur: number,
  start: number,
): { readonly shift: number; readonly value: number } {
  const perWeighed = 1 / blur;
  const perUnknown = 1 / Math.hypot(residualSd, blur);
  let shift = start;
  let value = 0;
  for (let step = 0; step < 60; step++) {
    value = 0;
    let slope = 0;
    let curvature = 1e-12;
    const add = (x: number, per: number, weight: number) => {
      const log = logNormalCdf(x);
      const ratio = Math.exp(-0.5 * x * x - LOG_ROOT_TWO_PI - log);
      value += weight * log;
      slope += weight * per * ratio;
      curvature += weight * per * per * Math.max(0, ratio * (x + ratio));
    };
    at.forEach((bag, i) => {
      add((bag - shift) * perWeighed, -perWeighed, count[i]!);
    });
    for (const { mean, sd } of unknown) {
      for (const { node, weight } of HERMITE_RULE) add((shift - mean - node * sd) * perUnknown, perUnknown, weight);
    }
    const move = Math.max(-1, Math.min(1, slope / curvature));
    if (Math.abs(move) < 1e-6) break;
    shift += move;
  }
  return { shift, value };
}
