import { normalCdf } from '../engine/normal-cdf.ts';
import type { CutSpell, OpeningSpell } from './cut-spells.ts';
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
  /** Likelihoods of a bank under a behaviour by its place among them, as `spellLikelihoods`. */
  readonly likelihoodsOf: (bank: KnownBank, behaviour: number) => SpellLikelihoods;
}

/** For each node as a peg's own usual. */
type SpellLikelihoods = readonly [ended: Float64Array, unfinished: Float64Array];

const RESTING_SHARES = [0.5, 0.25, 0.1] as const;
const SCATTERS = [0.1, 0.16, 0.25, 0.37, 0.55, 0.8] as const;
const BETWEEN_PEGS = [0.04, 0.15, 0.3, 0.5, 0.8] as const;
const NODE_STEP = 0.1;
/** Every second node is a candidate for the venue's usual. */
const USUAL_STEP = 2;
/** Beyond this many pegs the venue's usual is known well enough: every so many-th is taken. */
const MAX_PEGS = 400;

/**
 * Learns how a venue's banks behave. The growth from one cut to the next, in growing days with resting days counted as a
 * share of one, is log-normal about the peg's own usual, and the pegs' usuals are normal about the venue's. A bank
 * that is cut on a walk needed it at some time since the walk before, so an interval enters by the chance that it ends
 * between the two (interval-censored), and the unfinished one by the chance that it lasts beyond the last look
 * (right-censored; Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data, chapter 3, from memory). The four unknowns are not estimated and held but
 * weighed over a grid, since a few intervals leave them wide open.
 * @returns null where no interval of the venue has ended: then nothing is known
 */
export function learnCutUsual(banks: readonly KnownBank[]): CutUsual | null {
  const all = banks.filter(({ spells, opening }) => spells.length > 0 || opening !== null);
  const spells = all.flatMap((bank) => bank.spells);
  if (!spells.some(({ isEnded }) => isEnded)) return null;
  const step = Math.ceil(all.length / MAX_PEGS);
  const sample = all.filter((_, index) => index % step === 0);
  const nodes = nodesFor(spells);
  const spreads = spreadsOver(nodes);
  const behaviours = RESTING_SHARES.flatMap((restingShare) => SCATTERS.map((scatter) => ({ restingShare, scatter })));
  const known = new Map<KnownBank, SpellLikelihoods[]>(sample.map((bank) => [bank, []]));
  const logs = behaviours.map((behaviour) => {
    const total = new Float64Array(spreads.length);
    const ofSpells = alikeLikelihoods(behaviour, nodes);
    for (const [bank, likelihoods] of known) {
      const ofBank = spellLikelihoods(bank, nodes, ofSpells);
      likelihoods.push(ofBank);
      addLogChancesInPlace(total, spreads, product(...ofBank));
    }
    return total;
  });
  const most = Math.max(...logs.map((each) => each.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)));
  const weights = logs.map((each) => each.map((log) => Math.exp(log - most)));
  const sum = weights.reduce((total, each) => total + each.reduce((a, b) => a + b, 0), 0);
  return {
    behaviours,
    nodes,
    spreads,
    weights: weights.map((each) => each.map((weight) => weight / sum)),
    likelihoodsOf: (bank, at) =>
      known.get(bank)?.[at] ?? spellLikelihoods(bank, nodes, alikeLikelihoods(behaviours[at] as Behaviour, nodes)),
  };
}

/** What is known of one peg's bank. */
export interface KnownBank {
  readonly opening: OpeningSpell | null;
  readonly spells: readonly CutSpell[];
}

/** No spell rules a usual out altogether. */
const LEAST_LIKELIHOOD = 1e-12;

/** Φ(z); 0 where it is far below what counts. Most nodes lie that far from what was seen. */
function chanceAbove(z: number): number {
  return z < -8 ? 0 : normalCdf(z);
}

/** Likelihoods for each node as the usual of a spell's peg. */
interface NodeLikelihoods {
  readonly ofOpening: (opening: OpeningSpell) => Float64Array;
  readonly ofSpell: (spell: CutSpell) => Float64Array;
}

/** The likelihood of what has ended at a peg, and that of the unfinished spell, for each node as the peg's own usual. */
function spellLikelihoods(
  { opening, spells }: KnownBank,
  nodes: readonly number[],
  { ofOpening, ofSpell }: NodeLikelihoods,
): SpellLikelihoods {
  let ended: Float64Array = opening === null ? new Float64Array(nodes.length).fill(1) : ofOpening(opening);
  let unfinished: Float64Array = new Float64Array(nodes.length).fill(1);
  for (const spell of spells) {
    if (spell.isEnded) ended = product(ended, ofSpell(spell));
    else unfinished = product(unfinished, ofSpell(spell));
  }
  return [ended, unfinished];
}

/** Banks are walked on the same days: many spells are alike, and each kind is worked out once. */
function alikeLikelihoods({ restingShare, scatter }: Behaviour, nodes: readonly number[]): NodeLikelihoods {
  const atNodes = (likelihoodAt: (usual: number) => number) =>
    Float64Array.from(nodes, (usual) => Math.max(likelihoodAt(usual), LEAST_LIKELIHOOD));
  return {
    ofOpening: onceForAlike((opening) => atNodes(openingLikelihood(opening, restingShare, scatter))),
    ofSpell: onceForAlike((spell) => atNodes(spellLikelihood(spell, restingShare, scatter))),
  };
}

function onceForAlike(work: (spell: OpeningSpell) => Float64Array): (spell: OpeningSpell) => Float64Array {
  const met = new Map<string, Float64Array>();
  return (spell) => {
    const { lasted, uncutUntil, isEnded } = spell;
    const kind = [lasted.growing, lasted.resting, uncutUntil.growing, uncutUntil.resting, isEnded].join(' ');
    const likelihood = met.get(kind) ?? work(spell);
    met.set(kind, likelihood);
    return likelihood;
  };
}

/** The likelihood of a spell that began with a cut, as a function of the peg's own usual. */
function spellLikelihood(
  { lasted, uncutUntil, isEnded }: OpeningSpell,
  restingShare: number,
  scatter: number,
): (usual: number) => number {
  const by = logGrowth(growthOf(lasted, restingShare));
  const notBy = logGrowth(growthOf(uncutUntil, restingShare));
  const isOpenBelow = growthOf(uncutUntil, restingShare) <= 0;
  return (usual) => {
    const beyond = isOpenBelow ? 1 : chanceAbove((usual - notBy) / scatter);
    return isEnded ? beyond - chanceAbove((usual - by) / scatter) : beyond;
  };
}

/**
 * The likelihood of what came before a peg's first cut, as a function of the peg's own usual. Its records begin at any point
 * of an interval, and a long interval holds more such points than a short one: the time from there to the next cut has the
 * density S(x) / E(T) of a renewal process that has long been running (Cox, Renewal Theory, chapter 5, from memory), and
 * goes beyond x with the chance E(max(T - x, 0)) / E(T). Without it a short record would know its quick banks alone.
 */
function openingLikelihood(
  { lasted, uncutUntil, isEnded }: OpeningSpell,
  restingShare: number,
  scatter: number,
): (usual: number) => number {
  const notBy = chanceBeyond(growthOf(uncutUntil, restingShare), scatter);
  if (!isEnded) return notBy;
  const by = chanceBeyond(growthOf(lasted, restingShare), scatter);
  return (usual) => notBy(usual) - by(usual);
}

/** E(max(T - x, 0)) / E(T) for a log-normal T, as a function of its log median. */
function chanceBeyond(growth: number, scatter: number): (usual: number) => number {
  if (growth <= 0) return () => 1;
  const log = Math.log(growth);
  return (usual) => {
    const z = (usual - log) / scatter;
    return normalCdf(z + scatter) - Math.exp(log - usual - scatter ** 2 / 2) * normalCdf(z);
  };
}

/**
 * Adds to the total of each spread the log of what it gives a bank's likelihood. Four sums go side by side: each by itself would wait
 * for its own last addition.
 */
function addLogChancesInPlace(total: Float64Array, spreads: readonly Float64Array[], likelihood: Float64Array): void {
  const add = (index: number, chance: number) => {
    total[index] = (total[index] as number) + Math.log(Math.max(chance, 1e-300));
  };
  let index = 0;
  for (; index + 4 <= spreads.length; index += 4) {
    const [a, b, c, d] = spreads.slice(index, index + 4) as [Float64Array, Float64Array, Float64Array, Float64Array];
    let [ofA, ofB, ofC, ofD] = [0, 0, 0, 0];
    for (let node = 0; node < likelihood.length; node += 1) {
      const at = likelihood[node] as number;
      ofA += (a[node] as number) * at;
      ofB += (b[node] as number) * at;
      ofC += (c[node] as number) * at;
      ofD += (d[node] as number) * at;
    }
    add(index, ofA);
    add(index + 1, ofB);
    add(index + 2, ofC);
    add(index + 3, ofD);
  }
  for (; index < spreads.length; index += 1) add(index, dot(spreads[index] as Float64Array, likelihood));
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
