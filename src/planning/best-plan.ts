import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { INTERVAL_SDS } from '../domain/interval-level.ts';
import { improvePlan, type PlanScore } from './improve-plan.ts';
import { leastMeanSquare } from './lower-bound.ts';
import { PlanLattice } from './plan-lattice.ts';
import { bankStarts, type Plan, type PlanProblem } from './plan-problem.ts';
import { spreadOf } from './section-spread.ts';
import { drawWorth, type JointWorth, type WorthDraws, worthVectors } from './worth-draws.ts';

/** The plan of a match, with what it is to be judged by. Spreads are in multiples of par. */
export interface PlannedSections {
  readonly plan: Plan;
  /** Draws from the posterior behind every figure. */
  readonly draws: WorthDraws;
  /** Every plan that keeps the rules; a float. */
  readonly plansThatKeepRules: number;
  /** What decided: the least spread, or even gaps along the bank where the log sees no difference. */
  readonly chosenBy: 'spread' | 'even-gaps';
  /** `every-plan`: all were looked at. `bound`: proven by a bound. `search`: the best that was found. */
  readonly proof: 'every-plan' | 'bound' | 'search';
  readonly spread: number;
  /** No plan's spread is less than this; equal to `spread` where it is proven. Null where even gaps decided. */
  readonly leastSpread: number | null;
  /** Spreads of random plans that keep the same rules. */
  readonly random: { readonly plans: number; readonly best: number; readonly middle: number; readonly worst: number };
}

/** Random plans to set beside the chosen one. */
const RANDOM_PLANS = 1000;
const DRAWS = 2000;
/** So many plans are all looked at. */
const FEW_PLANS = 20_000;
/** The log sees a difference where in at least this share of random plans some section stands out. */
const MIN_SHARE = 0.1;
/** Work a search or a bound may cost, in multiplications. */
const SEARCH_WORK = 6e8;
const BOUND_WORK = 6e8;

/** Plans a match: null where no plan keeps the rules. The same problem, worth and seed give the same plan. */
export function bestPlan(problem: PlanProblem, joint: JointWorth, seed: number): PlannedSections | null {
  const random = xoroshiro128plus(seed);
  const lattice = new PlanLattice(problem);
  const count = lattice.count();
  if (count === 0) return null;
  const draws = drawWorth(joint, DRAWS, random);
  const worth = worthVectors(draws);
  const drawn = lattice.draw(RANDOM_PLANS, random);
  const judged = drawn.map((plan) => ({ plan, ...spreadOf(plan, worth) }));
  const seen = judged.filter(({ standsOut }) => standsOut > INTERVAL_SDS).length;
  const chosenBy = seen >= MIN_SHARE * RANDOM_PLANS ? 'spread' : 'even-gaps';
  const score: PlanScore =
    chosenBy === 'spread' ? (plan) => spreadOf(plan, worth).meanSquare : (plan) => unevenness(problem, plan);
  const isFew = count <= FEW_PLANS;
  const work = Math.max(1, problem.entries * problem.places.length);
  const found = isFew
    ? bestOf(lattice.all(), score)
    : searched(problem, [...drawn].sort((a, b) => score(a) - score(b)).slice(0, 5), score, seed, SEARCH_WORK / work);
  const { meanSquare } = spreadOf(found, worth);
  const least =
    chosenBy === 'even-gaps' ? null : isFew ? meanSquare : bounded(problem, lattice, worth, meanSquare, work);
  const sorted = judged.map((each) => Math.sqrt(each.meanSquare)).sort((a, b) => a - b);
  const isProven = least !== null && least >= meanSquare * (1 - 1e-9);
  return {
    plan: found,
    draws,
    plansThatKeepRules: count,
    chosenBy,
    proof: isFew ? 'every-plan' : isProven ? 'bound' : 'search',
    spread: Math.sqrt(meanSquare),
    leastSpread: least === null ? null : Math.sqrt(Math.max(0, least)),
    random: { plans: RANDOM_PLANS, best: sorted[0]!, middle: sorted[RANDOM_PLANS / 2]!, worst: sorted.at(-1)! },
  };
}

function bestOf(plans: Iterable<Plan>, score: PlanScore): Plan {
  let best: Plan = [];
  let least = Number.POSITIVE_INFINITY;
  for (const plan of plans) {
    const value = score(plan);
    if (value < least) {
      best = plan;
      least = value;
    }
  }
  return best;
}

function searched(
  problem: PlanProblem,
  from: readonly Plan[],
  score: PlanScore,
  seed: number,
  evaluations: number,
): Plan {
  const ends = from.map((plan, i) =>
    improvePlan(problem, plan, score, xoroshiro128plus(seed + i + 1), Math.floor(evaluations / from.length)),
  );
  return ends.reduce((best, end) => (end.score < best.score ? end : best)).plan;
}

function bounded(
  problem: PlanProblem,
  lattice: PlanLattice,
  worth: ReturnType<typeof worthVectors>,
  best: number,
  work: number,
): number {
  const costOfStep = lattice.starts.length * work * (problem.sections + problem.places.length);
  const steps = Math.min(60, Math.floor(BOUND_WORK / costOfStep));
  return steps < 2 ? 0 : leastMeanSquare(problem, lattice, worth, best, steps);
}

/** Mean square of the gaps along the bank between neighbours that go in: least where they are even. */
function unevenness(problem: PlanProblem, plan: Plan): number {
  const along = bankStarts(problem);
  const chosen = plan.flat();
  return chosen.reduce((sum, place, i) => {
    const next = chosen[i + 1] ?? (problem.isRing ? chosen[0]! : place);
    const metres = along[next]! - along[place]!;
    const gap = next < place ? metres + along.at(-1)! : metres;
    const isSameBank = problem.places[place]!.group === problem.places[next]!.group;
    return isSameBank ? sum + gap * gap : sum;
  }, 0);
}
