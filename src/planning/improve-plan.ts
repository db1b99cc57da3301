import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { keepsRules, type Plan, type PlanProblem } from './plan-problem.ts';

/** What is to be least. */
export type PlanScore = (plan: Plan) => number;

/**
 * Goes from a plan to better ones by small steps until none is better: another place for one that is in, a run of them moved by one, cuts moved along by
 * one place, sizes of two sections exchanged. The order in which steps are tried is seeded; every plan met keeps the rules.
 * @param evaluations after so many plans it stops where it is
 */
export function improvePlan(
  problem: PlanProblem,
  plan: Plan,
  score: PlanScore,
  random: RandomGenerator,
  evaluations: number,
): { readonly plan: Plan; readonly score: number; readonly evaluations: number } {
  let best = plan;
  let least = score(plan);
  let looked = 0;
  let isBetter = true;
  while (isBetter && looked < evaluations) {
    isBetter = false;
    for (const step of shuffled(stepsFrom(problem, best), random)) {
      const next = step(best);
      if (!keepsRules(problem, next)) continue;
      if (++looked > evaluations) break;
      const value = score(next);
      if (value < least - 1e-12) {
        best = next;
        least = value;
        isBetter = true;
        break;
      }
    }
  }
  return { plan: best, score: least, evaluations: looked };
}

type PlanStep = (plan: Plan) => Plan;

function stepsFrom(problem: PlanProblem, plan: Plan): PlanStep[] {
  const chosen = plan.flat();
  const isIn = new Set(chosen);
  const out = problem.places.map((_, place) => place).filter((place) => !isIn.has(place));
  const steps: PlanStep[] = chosen.flatMap((leaving) => out.map((coming) => exchange(problem, leaving, coming)));
  if (problem.isRing) steps.push(turn(1), turn(-1));
  // One by one, places in an even row cannot move without making it worse.
  chosen.forEach((_, from) => {
    for (let length = 2; length <= Math.min(LONGEST_RUN, chosen.length - from); length++) {
      steps.push(shiftRun(problem, from, length, 1), shiftRun(problem, from, length, -1));
    }
  });
  plan.forEach((a, i) => {
    plan.forEach((b, j) => {
      if (a.length > b.length) steps.push(exchangeSizes(i, j));
    });
  });
  return steps;
}

function exchange({ places }: PlanProblem, leaving: number, coming: number): PlanStep {
  return (plan) => {
    const chosen = plan.flat();
    const start = chosen[0]!;
    const along = (place: number) => (place - start + places.length) % places.length;
    const next = [...chosen.filter((place) => place !== leaving), coming];
    // Once round from where the first section begins; on an open bank the list itself is the order.
    const isTurned = chosen.some((place, i) => i > 0 && place < chosen[i - 1]!);
    next.sort(isTurned ? (a, b) => along(a) - along(b) : (a, b) => a - b);
    return cut(next, plan);
  };
}

const LONGEST_RUN = 16;

/** Moves a run of neighbours by one place along the bank. */
function shiftRun({ places, isRing }: PlanProblem, from: number, length: number, by: 1 | -1): PlanStep {
  return (plan) => {
    const moved = plan.flat().map((place, i) => (i >= from && i < from + length ? place + by : place));
    return cut(isRing ? moved.map((place) => (place + places.length) % places.length) : moved, plan);
  };
}

function turn(by: 1 | -1): PlanStep {
  return (plan) => {
    const chosen = plan.flat();
    return cut(by === 1 ? [...chosen.slice(1), chosen[0]!] : [chosen.at(-1)!, ...chosen.slice(0, -1)], plan);
  };
}

function exchangeSizes(i: number, j: number): PlanStep {
  return (plan) => {
    const like = [...plan];
    [like[i], like[j]] = [like[j]!, like[i]!];
    return cut(plan.flat(), like);
  };
}

/** Cuts places into sections of the sizes of another plan. */
function cut(chosen: readonly number[], like: Plan): Plan {
  let from = 0;
  return like.map(({ length }) => {
    from += length;
    return chosen.slice(from - length, from);
  });
}

function shuffled<T>(values: T[], random: RandomGenerator): T[] {
  for (let i = values.length - 1; i > 0; i--) {
    const j = uniformInt(random, 0, i);
    [values[i], values[j]] = [values[j]!, values[i]!];
  }
  return values;
}
