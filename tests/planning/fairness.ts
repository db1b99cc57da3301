import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Month } from '../../src/domain/day.ts';
import { bestPlan } from '../../src/planning/best-plan.ts';
import { PlanLattice } from '../../src/planning/plan-lattice.ts';
import type { Plan, PlanProblem } from '../../src/planning/plan-problem.ts';
import { jointPegWorth } from '../../src/ratings/joint-worth.ts';
import { truePegMonths } from '../demo/log/truth.ts';
import { type SimulationOptions, simulateFromModel } from '../demo/simulate-from-model.ts';

/** How far true section means lie apart, over simulated venues: root mean squares, in multiples of par. */
export interface Fairness {
  readonly kind: string;
  readonly venues: number;
  /** Sections chosen by what the log of the venue taught. */
  readonly planned: number;
  /** Every plan that keeps the rules as likely as any other. */
  readonly random: number;
  /** Pegs spaced evenly, sections cut equal from the first peg on. */
  readonly equalCuts: number;
  /** Venues in which the plan says that the log sees no difference. */
  readonly noDifference: number;
}

/** Kinds of venue: differences a long log knows well, and none at all. */
export const FAIRNESS_KINDS: Readonly<Record<string, Partial<SimulationOptions>>> = {
  'solid: pegs differ, 130 matches': {
    waters: 1,
    pegs: 32,
    events: 130,
    sd: { event: 0.7, angler: 0.35, peg: 0.35, feature: 0.2, featureMonth: 0.2, residual: 0.6 },
  },
  'fair: pegs differ less, 40 matches': {
    waters: 1,
    pegs: 32,
    events: 40,
    sd: { event: 0.7, angler: 0.35, peg: 0.2, feature: 0.1, featureMonth: 0.1, residual: 0.6 },
  },
  'none: every peg alike, 130 matches': {
    waters: 1,
    pegs: 32,
    events: 130,
    sd: { event: 0.7, angler: 0.35, peg: 0, feature: 0, featureMonth: 0, residual: 0.6 },
  },
};

const MONTH: Month = 6;
const ENTRIES = 24;
const SECTIONS = 4;

/** Plans a match on simulated venues and measures its sections by the truth that the logs were drawn from. */
export function fairness(kind: string, venues: number): Fairness {
  const sums = { planned: 0, random: 0, equalCuts: 0 };
  let noDifference = 0;
  for (let seed = 1; seed <= venues; seed++) {
    const { venue, truth } = simulateFromModel({ ...FAIRNESS_KINDS[kind], seed });
    const problem: PlanProblem = {
      places: venue.pegs.map(() => ({ group: 0, isStepFree: false, isEnd: false })),
      gapMetres: venue.pegs.map(() => 12),
      isRing: true,
      entries: ENTRIES,
      sections: SECTIONS,
      apartMetres: 0,
      stepFree: 0,
      mostEnds: null,
    };
    const worth = new Map(
      truePegMonths(truth, venue.pegs).map(({ water, peg, month, logWorth }) => [
        `${water}/${peg} ${month}`,
        Math.exp(logWorth),
      ]),
    );
    const trueMeanSquare = (plan: Plan) => {
      const means = plan.map(
        (section) =>
          section.reduce(
            (sum, place) => sum + worth.get(`${venue.pegs[place]!.water}/${venue.pegs[place]!.peg} ${MONTH}`)!,
            0,
          ) / section.length,
      );
      const overall = means.reduce((sum, mean) => sum + mean, 0) / means.length;
      return means.reduce((sum, mean) => sum + (mean - overall) ** 2, 0) / means.length;
    };
    const planned = bestPlan(problem, jointPegWorth(venue, venue.pegs, MONTH), seed)!;
    const random = new PlanLattice(problem).draw(200, xoroshiro128plus(seed));
    sums.planned += trueMeanSquare(planned.plan) / venues;
    sums.random += random.reduce((sum, plan) => sum + trueMeanSquare(plan), 0) / random.length / venues;
    sums.equalCuts += trueMeanSquare(equalCuts()) / venues;

    if (planned.chosenBy === 'even-gaps') noDifference++;
  }
  return {
    kind,
    venues,
    planned: Math.sqrt(sums.planned),
    random: Math.sqrt(sums.random),
    equalCuts: Math.sqrt(sums.equalCuts),
    noDifference,
  };
}

function equalCuts(): Plan {
  const chosen = Array.from({ length: ENTRIES }, (_, i) => Math.floor((i * 32) / ENTRIES));
  const size = ENTRIES / SECTIONS;
  return Array.from({ length: SECTIONS }, (_, s) => chosen.slice(s * size, (s + 1) * size));
}
