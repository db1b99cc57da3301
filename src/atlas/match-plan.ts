import { monthOf } from '../domain/day.ts';
import { isStepFree, type Match, type MatchSection, sectionName } from '../domain/match.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import { bestPlan, type PlannedSections } from '../planning/best-plan.ts';
import { keepsRules, type Plan } from '../planning/plan-problem.ts';
import { spreadOf } from '../planning/section-spread.ts';
import { type SectionWorth, sectionWorths } from '../planning/section-worths.ts';
import { type NoPlan, whyNoPlan } from '../planning/why-no-plan.ts';
import { worthVectors } from '../planning/worth-draws.ts';
import { jointPegWorth } from '../ratings/joint-worth.ts';
import { type Atlas, pegOf, surveyOfPeg } from './atlas.ts';
import { type MatchProblem, matchProblem } from './match-problem.ts';

/** A match planned: sections and kept pegs as they go into its file, and what they are to be judged by. */
export interface MatchPlan {
  readonly problem: MatchProblem;
  readonly planned: PlannedSections;
  readonly sections: readonly PlannedSection[];
  readonly kept: readonly PegKey[];
}

export interface PlannedSection extends MatchSection {
  readonly worth: SectionWorth;
}

/** How the plan that stands in a match's file does, beside the best there is. */
export interface JudgedPlan {
  readonly sections: readonly PlannedSection[];
  readonly spread: number;
  /** Rules of the match that it breaks, as sentences. */
  readonly broken: readonly string[];
}

/** Plans a match; says what stands in the way where no plan keeps its rules. The same folder gives the same plan. */
export function planMatch(
  atlas: Atlas,
  match: Match,
): MatchPlan | { readonly problem: MatchProblem; readonly no: NoPlan } {
  const problem = matchProblem(atlas, match);
  const { pegs } = problem;
  if (match.entries > pegs.length) return { problem, no: whyNoPlan(problem.problem) };
  const joint = jointPegWorth(atlas.venue, pegs, monthOf(match.day), atlas.ratings);
  const planned = bestPlan(problem.problem, joint, seedOf(match.id));
  if (planned === null) return { problem, no: whyNoPlan(problem.problem) };
  const sections = namedSections(planned.plan, problem, planned);
  return { problem, planned, sections, kept: keptPegs(atlas, match, sections) };
}

/** Judges the plan of a match's own file by the same draws as the best one. */
export function judgePlan(match: Match, { problem, planned }: MatchPlan): JudgedPlan {
  const place = new Map(problem.pegs.map((peg, i) => [pegKey(peg.water, peg.peg), i]));
  const notIn = new Map(problem.notIn.map(({ peg, by, why }) => [peg, by === 'closed' ? `closed ${why}` : why]));
  const broken: string[] = [];
  for (const peg of match.plan.flatMap(({ pegs }) => pegs)) {
    if (!place.has(peg)) broken.push(`${peg} may not go in: ${notIn.get(peg) ?? 'it is no peg of these waters'}.`);
  }
  const plan: Plan = match.plan.map(({ pegs }) => pegs.flatMap((peg) => place.get(peg) ?? []));
  if (broken.length === 0 && !keepsRules(problem.problem, planInOrder(plan))) {
    broken.push(
      'Not every rule of the match is kept: pegs too near one another, a section that does not follow the bank, too few free of steps, or too many end pegs in one.',
    );
  }
  const filled = plan.every(({ length }) => length > 0) && plan.length > 0;
  const worth = filled ? sectionWorths(plan, planned.draws) : [];
  return {
    sections: match.plan.map((section, i) => ({ ...section, worth: worth[i] ?? NO_WORTH })),
    spread: filled ? Math.sqrt(spreadOf(plan, worthVectors(planned.draws)).meanSquare) : Number.NaN,
    broken,
  };
}

const NO_WORTH: SectionWorth = {
  mean: Number.NaN,
  low80: Number.NaN,
  high80: Number.NaN,
  chanceBest: 0,
  standsOut: false,
};

/** Places of a plan in the order of the bank, whatever order a person wrote them in. */
export function planInOrder(plan: Plan): Plan {
  const sorted = plan.map((section) => {
    const ascending = [...section].sort((a, b) => a - b);
    // A section over the end of a ring: its widest step is where it begins.
    const steps = ascending.map((place, i) => (i === 0 ? 0 : place - ascending[i - 1]!));
    const widest = steps.indexOf(Math.max(...steps));
    const others = new Set(plan.flat().filter((place) => !section.includes(place)));
    const isSplit = ascending.some(
      (place, i) => i > 0 && [...others].some((other) => other > ascending[i - 1]! && other < place),
    );
    return isSplit ? [...ascending.slice(widest), ...ascending.slice(0, widest)] : ascending;
  });
  return sorted.sort((a, b) => a[0]! - b[0]!);
}

function namedSections(plan: Plan, { pegs }: MatchProblem, { draws }: PlannedSections): PlannedSection[] {
  const worths = sectionWorths(plan, draws);
  return plan.map((section, i) => ({
    name: sectionName(i),
    pegs: section.map((place) => pegKey(pegs[place]!.water, pegs[place]!.peg)),
    worth: worths[i]!,
  }));
}

/** Pegs kept for those who need one free of steps: nothing against the record first, then the shortest walk, sections in turn. */
export function keptPegs(atlas: Atlas, match: Match, sections: readonly MatchSection[]): PegKey[] {
  const order = (peg: PegKey) => {
    const { accessFindings, walks } = surveyOfPeg(atlas, peg);
    return [accessFindings.length, walks[0]?.distanceMetres ?? Number.POSITIVE_INFINITY] as const;
  };
  const bySection = sections.map(({ pegs }) =>
    pegs
      .filter((peg) => isStepFree(pegOf(atlas, peg)))
      .sort((a, b) => order(a)[0] - order(b)[0] || order(a)[1] - order(b)[1]),
  );
  const kept: PegKey[] = [];
  for (let turn = 0; kept.length < match.stepFree && turn < match.entries; turn++) {
    const best = bySection.flatMap((pegs) => pegs[turn] ?? []).sort((a, b) => order(a)[1] - order(b)[1]);
    kept.push(...best.slice(0, match.stepFree - kept.length));
  }
  return kept;
}

/** A seed that a match's id gives: a 32-bit FNV-1a hash (Fowler, Noll and Vo, 1991). */
function seedOf(id: string): number {
  let hash = 0x811c9dc5;
  for (const character of id) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
  return hash >>> 0;
}

/** A peg's record says which limits hold while it is fished: the organiser is told of them with the plan. */
export function limitedPegs(atlas: Atlas, sections: readonly MatchSection[]): readonly Peg[] {
  return sections
    .flatMap(({ pegs }) => pegs.map((peg) => pegOf(atlas, peg)))
    .filter(({ limits }) => Object.keys(limits).length > 0);
}
