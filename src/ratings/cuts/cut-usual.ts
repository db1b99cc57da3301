import { normalCdf } from '../engine/normal-cdf.ts';
import type { CutSpell } from './cut-spells.ts';
import { growthOf } from './growth-days.ts';

/** One way the venue's banks may behave: how much of the growth goes on at rest, and how much one interval differs from the next. */
export interface Behaviour {
  readonly restingShare: number;
  /** Standard deviation of a log interval about its peg's own usual. */
  readonly scatter: number;
}

/** What a venue's spells tell of its usual, as weights over ways to behave. */
export interface CutUsual {
  readonly behaviours: readonly Behaviour[];
  /** Log growth days that a peg's own usual may be. */
  readonly nodes: readonly number[];
  /** Log intervals the venue's usual may be, with how far pegs differ from it: each a distribution over the nodes. */
  readonly spreads: readonly Float64Array[];
  /** Posterior weight of a behaviour with a spread: `weights[behaviour][spread]`; they sum to 1. */
  readonly weights: readonly Float64Array[];
}

const RESTING_SHARES = [1, 0.5, 0.25, 0.1] as const;
const SCATTERS = [0.1, 0.16, 0.25, 0.37, 0.55, 0.8] as const;
const BETWEEN_PEGS = [0.04, 0.15, 0.3, 0.5, 0.8] as const;
const NODE_STEP = 0.1;
/** Every second node is a candidate for the venue's usual. */
const USUAL_STEP = 2;
/** Beyond this many pegs the venue's usual is known well enough: every so many-th is taken. */
const MOST_PEGS = 400;

/**
 * Learns how a venue's banks behave. The growth from one cut to the next, in growing days with resting days counted as a
 * share of one, is log-normal about the peg's own usual, and the pegs' usuals are normal about the venue's. The
 * unfinished interval enters by the chance that it lasts longer than it has (right-censored; Kalbfleisch and Prentice, The
 * Statistical Analysis of Failure Time Data, chapter 3, from memory). The four unknowns are not estimated and held but
 * weighed over a grid, since a few intervals leave them wide open.
 * @returns null where no interval of the venue has ended: then nothing is known
 */
export function learnCutUsual(spellsByPeg: readonly (readonly CutSpell[])[]): CutUsual | null {
  const spells = spellsByPeg.filter((each) => each.length > 0);
  if (!spells.some((each) => each.some(({ isEnded }) => isEnded))) return null;
  const step = Math.ceil(spells.length / MOST_PEGS);
  const sample = spells.filter((_, index) => index % step === 0);
  const nodes = nodesFor(spells.flat());
  const spreads = spreadsOver(nodes);
  const behaviours = RESTING_SHARES.flatMap((restingShare) => SCATTERS.map((scatter) => ({ restingShare, scatter })));
  const logs = behaviours.map((behaviour) => {
    const total = new Float64Array(spreads.length);
    for (const own of sample) {
      const likelihood = product(...spellLikelihoods(own, behaviour, nodes));
      spreads.forEach((spread, index) => {
        total[index] = (total[index] as number) + Math.log(Math.max(dot(spread, likelihood), 1e-300));
      });
    }
    return total;
  });
  const most = Math.max(...logs.map((each) => each.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)));
  const weights = logs.map((each) => each.map((log) => Math.exp(log - most)));
  const sum = weights.reduce((total, each) => total + each.reduce((a, b) => a + b, 0), 0);
  return { behaviours, nodes, spreads, weights: weights.map((each) => each.map((weight) => weight / sum)) };
}

/** The likelihood of a peg's ended spells, and that of the unfinished one, for each node as the peg's own usual. */
export function spellLikelihoods(
  spells: readonly CutSpell[],
  { restingShare, scatter }: Behaviour,
  nodes: readonly number[],
): readonly [ended: Float64Array, unfinished: Float64Array] {
  const ended = new Float64Array(nodes.length).fill(1);
  const unfinished = new Float64Array(nodes.length).fill(1);
  for (const { lasted, isEnded, endedGrowing } of spells) {
    const log = logGrowth(growthOf(lasted, restingShare));
    // A density by the calendar's day: at rest a day holds less growth.
    const density = (endedGrowing ? 1 : restingShare) / (Math.exp(log) * scatter);
    for (let node = 0; node < nodes.length; node += 1) {
      const z = (log - (nodes[node] as number)) / scatter;
      if (isEnded) ended[node] = (ended[node] as number) * Math.max(density * Math.exp(-0.5 * z * z), 1e-12);
      else unfinished[node] = (unfinished[node] as number) * Math.max(normalCdf(-z), 1e-12);
    }
  }
  return [ended, unfinished];
}

/** Products, one by one. */
export function product(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, index) => value * (b[index] as number));
}

/** The log of days of growth; half a day is the least, since a day is the least that is written. */
export function logGrowth(days: number): number {
  return Math.log(Math.max(days, 0.5));
}

/** Sum of products. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < a.length; index += 1) sum += (a[index] as number) * (b[index] as number);
  return sum;
}

function nodesFor(spells: readonly CutSpell[]): readonly number[] {
  const logs = spells.flatMap(({ lasted }) => RESTING_SHARES.map((share) => logGrowth(growthOf(lasted, share))));
  const low = logs.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY) - 0.8;
  const high = logs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY) + 1.6;
  return Array.from({ length: Math.ceil((high - low) / NODE_STEP) + 1 }, (_, index) => low + index * NODE_STEP);
}

function spreadsOver(nodes: readonly number[]): readonly Float64Array[] {
  return nodes.flatMap((usual, index) =>
    index % USUAL_STEP !== 0
      ? []
      : BETWEEN_PEGS.map((spread) => {
          const densities = Float64Array.from(nodes, (node) => Math.exp(-0.5 * ((node - usual) / spread) ** 2));
          const sum = densities.reduce((a, b) => a + b, 0);
          return densities.map((density) => density / sum);
        }),
  );
}
