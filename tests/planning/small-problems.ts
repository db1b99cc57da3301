import fc from 'fast-check';
import type { PlanProblem } from '../../src/planning/plan-problem.ts';

/** Small problems of every kind: rings and open banks, one water or two, rules on or off. */
export const smallProblems: fc.Arbitrary<PlanProblem> = fc
  .record({
    size: fc.integer({ min: 2, max: 9 }),
    gaps: fc.array(fc.integer({ min: 3, max: 12 }), { minLength: 9, maxLength: 9 }),
    flags: fc.array(fc.record({ isStepFree: fc.boolean(), isEnd: fc.boolean() }), { minLength: 9, maxLength: 9 }),
    isRing: fc.boolean(),
    split: fc.integer({ min: 0, max: 8 }),
    entries: fc.integer({ min: 1, max: 7 }),
    sections: fc.integer({ min: 1, max: 3 }),
    apartMetres: fc.constantFrom(0, 8, 14),
    stepFree: fc.integer({ min: 0, max: 2 }),
    mostEnds: fc.constantFrom(null, 1, 2),
  })
  .filter(({ entries, sections, size }) => sections <= entries && entries <= size)
  .map(({ size, gaps, flags, split, isRing, ...rest }) => ({
    ...rest,
    isRing: isRing && split === 0,
    gapMetres: gaps.slice(0, size),
    places: flags.slice(0, size).map((flag, i) => ({ ...flag, group: split > 0 && i >= split ? 1 : 0 })),
  }));
