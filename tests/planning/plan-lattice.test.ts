import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { PlanLattice } from '../../src/planning/plan-lattice.ts';
import { keepsRules, type PlanProblem } from '../../src/planning/plan-problem.ts';
import { everyPlan, planKey } from './every-plan.ts';
import { smallProblems } from './small-problems.ts';

describe('PlanLattice', () => {
  test('counts and lists exactly the plans that going through all subsets finds', () => {
    fc.assert(
      fc.property(smallProblems, (problem) => {
        const lattice = new PlanLattice(problem);
        const truth = everyPlan(problem).map(planKey).sort();
        const listed = [...lattice.all()];
        expect(listed.map(planKey).sort()).toEqual(truth);
        expect(lattice.count()).toBe(truth.length);
        for (const plan of listed) expect(keepsRules(problem, plan)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test('finds the cheapest of all plans where costs add up', () => {
    fc.assert(
      fc.property(smallProblems, fc.infiniteStream(fc.integer({ min: -50, max: 50 })), (problem, numbers) => {
        const costs = problem.places.map(() => Array.from({ length: 3 }, () => numbers.next().value));
        const cost = (place: number, section: number, isLarger: boolean) =>
          costs[place]![section]! + (isLarger ? 0.5 : 0);
        const small = Math.floor(problem.entries / problem.sections);
        const lattice = new PlanLattice(problem);
        const found = lattice.starts.flatMap((start) => lattice.cheapest(start, cost) ?? []);
        const least = Math.min(...found.map((each) => each.cost));
        const totals = [...lattice.all()].map((plan) =>
          plan.reduce(
            (sum, section, s) => sum + section.reduce((own, place) => own + cost(place, s, section.length > small), 0),
            0,
          ),
        );
        expect(least).toBeCloseTo(Math.min(...totals), 9);
      }),
      { numRuns: 150 },
    );
  });

  test('draws every plan as often as any other', () => {
    const problem: PlanProblem = {
      places: Array.from({ length: 6 }, () => ({ group: 0, isStepFree: false, isEnd: false })),
      gapMetres: [10, 10, 10, 10, 10, 10],
      isRing: true,
      entries: 4,
      sections: 2,
      apartMetres: 0,
      stepFree: 0,
      mostEnds: null,
    };
    const lattice = new PlanLattice(problem);
    const plans = lattice.count();
    const draws = 30_000;
    const seen = new Map<string, number>();
    for (const plan of lattice.draw(draws, xoroshiro128plus(7)))
      seen.set(planKey(plan), (seen.get(planKey(plan)) ?? 0) + 1);
    expect(seen.size).toBe(plans);
    const expected = draws / plans;
    const chiSquare = [...seen.values()].reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    // 29 degrees of freedom: 58.3 is passed by chance once in a thousand (tables of the chi-square distribution).
    expect(plans).toBe(30);
    expect(chiSquare).toBeLessThan(58.3);
  });
});
