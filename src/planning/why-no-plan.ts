import { PlanLattice } from './plan-lattice.ts';
import type { PlanProblem } from './plan-problem.ts';

/** Why no plan keeps the rules: the first of them that stands in the way, with how much of it could be had. */
export type NoPlan =
  | { readonly rule: 'pegs'; readonly most: number }
  | { readonly rule: 'apart'; readonly most: number }
  | { readonly rule: 'waters' }
  | { readonly rule: 'step-free'; readonly most: number }
  | { readonly rule: 'ends' }
  | { readonly rule: 'together' };

/** Finds what stands in the way of a problem that has no plan, by giving up rules one after the other. */
export function whyNoPlan(problem: PlanProblem): NoPlan {
  const { places, entries } = problem;
  if (entries > places.length) return { rule: 'pegs', most: places.length };
  const loose = {
    ...problem,
    sections: 1,
    stepFree: 0,
    mostEnds: null,
    places: places.map((place) => ({ ...place, group: 0 })),
  };
  if (!hasPlan(loose)) return { rule: 'apart', most: mostEntries(loose) };
  const free = places.filter(({ isStepFree }) => isStepFree).length;
  if (free < problem.stepFree) return { rule: 'step-free', most: free };
  if (!hasPlan({ ...problem, stepFree: 0, mostEnds: null })) return { rule: 'waters' };
  if (hasPlan({ ...problem, mostEnds: null })) return { rule: 'ends' };
  return { rule: 'together' };
}

function hasPlan(problem: PlanProblem): boolean {
  return new PlanLattice(problem).count() > 0;
}

/** The most entries for which some plan keeps the rules; with fewer there always is one. */
function mostEntries(problem: PlanProblem): number {
  let least = 0;
  let most = problem.entries;
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (hasPlan({ ...problem, entries: middle })) least = middle;
    else most = middle;
  }
  return least;
}
