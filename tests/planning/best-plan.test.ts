import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { bestPlan } from '../../src/planning/best-plan.ts';
import { improvePlan } from '../../src/planning/improve-plan.ts';
import { leastMeanSquare } from '../../src/planning/lower-bound.ts';
import { PlanLattice } from '../../src/planning/plan-lattice.ts';
import { keepsRules, type PlanProblem } from '../../src/planning/plan-problem.ts';
import { spreadOf } from '../../src/planning/section-spread.ts';
import { sectionWorths } from '../../src/planning/section-worths.ts';
import { drawWorth, type JointWorth, worthVectors } from '../../src/planning/worth-draws.ts';
import { everyPlan } from './every-plan.ts';
import { smallProblems } from './small-problems.ts';

/** Places worth what is given, known this well, independent of one another. */
function worthOf(logMean: readonly number[], sd: number): JointWorth {
  const covariance = new Float64Array(logMean.length ** 2);
  logMean.forEach((_, i) => {
    covariance[i * logMean.length + i] = sd * sd;
  });
  return { logMean, covariance };
}

/** A ring on which the good places lie together. */
function gradedRing(size: number, entries: number, sections: number): PlanProblem {
  return {
    places: Array.from({ length: size }, () => ({ group: 0, isStepFree: false, isEnd: false })),
    gapMetres: Array.from({ length: size }, () => 10),
    isRing: true,
    entries,
    sections,
    apartMetres: 0,
    stepFree: 0,
    mostEnds: null,
  };
}

const graded = (size: number) =>
  Array.from({ length: size }, (_, i) => 0.5 * Math.sin((2 * Math.PI * i) / size) + 0.1 * (i % 3));

/** Good and bad places anywhere. */
const scattered = (size: number) => Array.from({ length: size }, (_, i) => 0.5 * Math.sin(12.9898 * (i + 1) ** 2));

describe('spreadOf', () => {
  test('is the mean over the draws of the variance between section means', () => {
    const draws = drawWorth(worthOf([0.1, -0.4, 0.3, 0, 0.2], 0.3), 400, xoroshiro128plus(1));
    const plan = [
      [0, 1],
      [2, 3, 4],
    ];
    let meanSquare = 0;
    for (let d = 0; d < draws.draws; d++) {
      const means = plan.map(
        (section) => section.reduce((sum, i) => sum + draws.worth[d * 5 + i]!, 0) / section.length,
      );
      const overall = (means[0]! + means[1]!) / 2;
      meanSquare += means.reduce((sum, mean) => sum + (mean - overall) ** 2, 0) / 2 / draws.draws;
    }
    expect(spreadOf(plan, worthVectors(draws)).meanSquare).toBeCloseTo(meanSquare, 10);
  });
});

describe('bestPlan', () => {
  test('of a small problem is the best of all plans that going through every subset finds', () => {
    fc.assert(
      fc.property(smallProblems, fc.integer({ min: 1, max: 1000 }), (problem, seed) => {
        const joint = worthOf(
          problem.places.map((_, i) => Math.sin(7 * i + seed)),
          0.1,
        );
        const planned = bestPlan(problem, joint, seed);
        const truth = everyPlan(problem);
        expect(planned === null).toBe(truth.length === 0);
        if (planned === null) return;
        if (planned.chosenBy === 'even-gaps') return;
        const worth = worthVectors(planned.draws);
        const least = Math.min(...truth.map((plan) => spreadOf(plan, worth).meanSquare));
        expect(planned.spread).toBeCloseTo(Math.sqrt(least), 9);
        expect(planned.proof).toBe('every-plan');
      }),
      { numRuns: 60 },
    );
  });

  test('the search finds what looking at every plan finds, and the bound never lies above it', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const problem = gradedRing(12, 9, 3);
      const joint = worthOf(
        graded(12).map((worth, i) => worth + 0.2 * Math.sin(seed * i)),
        0.05,
      );
      const worth = worthVectors(drawWorth(joint, 500, xoroshiro128plus(seed)));
      const score = (plan: readonly (readonly number[])[]) => spreadOf(plan, worth).meanSquare;
      const lattice = new PlanLattice(problem);
      const least = Math.min(...[...lattice.all()].map(score));
      const starts = lattice.draw(5, xoroshiro128plus(seed));
      const found = Math.min(
        ...starts.map((plan) => improvePlan(problem, plan, score, xoroshiro128plus(9), 1e5).score),
      );
      expect(found).toBeLessThanOrEqual(least * 1.5 + 1e-6);
      const bound = leastMeanSquare(problem, lattice, worth, least, 60);
      expect(bound).toBeGreaterThanOrEqual(0);
      expect(bound).toBeLessThanOrEqual(least + 1e-12);
    }
  });

  test('at least halves the spread of random plans where the differences are solid', () => {
    const problem = gradedRing(30, 24, 4);
    const planned = bestPlan(problem, worthOf(scattered(30), 0.05), 3)!;
    expect(planned.chosenBy).toBe('spread');
    expect(keepsRules(problem, planned.plan)).toBe(true);
    expect(planned.spread).toBeLessThan(planned.random.middle / 2);
    expect(planned.spread).toBeLessThanOrEqual(planned.random.best);
    expect(planned.leastSpread!).toBeLessThanOrEqual(planned.spread + 1e-12);
  });

  test('spaces places evenly where the log sees no difference', () => {
    const problem = gradedRing(24, 12, 3);
    const planned = bestPlan(problem, worthOf(new Array(24).fill(0), 0.2), 3)!;
    expect(planned.chosenBy).toBe('even-gaps');
    const places = planned.plan.flat();
    const gaps = places.map((place, i) => (places[(i + 1) % 12]! - place + 24) % 24);
    expect(gaps).toEqual(new Array(12).fill(2));
    expect(sectionWorths(planned.plan, planned.draws).every(({ standsOut }) => !standsOut)).toBe(true);
  });

  test('gives the same plan for the same seed, and no plan where none keeps the rules', () => {
    const problem = gradedRing(14, 9, 3);
    const joint = worthOf(graded(14), 0.1);
    expect(bestPlan(problem, joint, 5)!.plan).toEqual(bestPlan(problem, joint, 5)!.plan);
    expect(bestPlan({ ...problem, apartMetres: 20 }, joint, 5)).toBeNull();
  });

  test('plans 400 entries of 420 places', () => {
    const problem = { ...gradedRing(420, 400, 20), isRing: false };
    const planned = bestPlan(problem, worthOf(graded(420), 0.1), 5)!;
    expect(keepsRules(problem, planned.plan)).toBe(true);
    expect(planned.plan.map(({ length }) => length)).toEqual(new Array(20).fill(20));
  });
});

describe('sectionWorths', () => {
  test('gives chances to be best that add up to one', () => {
    const draws = drawWorth(worthOf(graded(9), 0.2), 1000, xoroshiro128plus(2));
    const worths = sectionWorths(
      [
        [0, 1, 2],
        [3, 4, 5],
        [6, 7, 8],
      ],
      draws,
    );
    expect(worths.reduce((sum, { chanceBest }) => sum + chanceBest, 0)).toBeCloseTo(1, 9);
    for (const { low80, mean, high80 } of worths) {
      expect(low80).toBeLessThan(mean);
      expect(high80).toBeGreaterThan(mean);
    }
  });
});
