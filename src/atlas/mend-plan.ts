import type { Match, MatchSection } from '../domain/match.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { keepsRules, type Plan } from '../planning/plan-problem.ts';
import { spreadOf } from '../planning/section-spread.ts';
import { worthVectors } from '../planning/worth-draws.ts';
import type { Atlas } from './atlas.ts';
import { keptPegs, type MatchPlan, planInOrder } from './match-plan.ts';

/** A plan of which some pegs may not go in any more, with others for them and as little else moved as can be. */
export interface MendedPlan {
  readonly sections: readonly MatchSection[];
  readonly kept: readonly PegKey[];
  /** Each with the section it was in, or is in now. */
  readonly out: readonly SeatedPeg[];
  readonly in: readonly SeatedPeg[];
  /** Pegs that stay in and are in another section than before. */
  readonly moved: readonly (SeatedPeg & { readonly from: string })[];
  readonly spread: number;
}

interface SeatedPeg {
  readonly peg: PegKey;
  readonly section: string;
}

/** To look at more ways than this takes too long, and where so many pegs go a new plan is the better answer. */
const MAX_WAYS = 200_000;

/**
 * Puts other pegs in for those that may not go in any more (a peg closed the day before). All other pegs stay in; of the ways
 * that keep every rule of the match it takes one in which the fewest of them change their section, and of these the one whose
 * sections lie nearest to one another. Null where there is none.
 */
export function mendPlan(atlas: Atlas, match: Match, { problem, planned }: MatchPlan): MendedPlan | null {
  const place = new Map(problem.pegs.map((peg, i) => [pegKey(peg.water, peg.peg), i]));
  const keyOf = (i: number) => pegKey(problem.pegs[i]!.water, problem.pegs[i]!.peg);
  const before = new Map(match.plan.flatMap(({ name, pegs }) => pegs.map((peg) => [peg, name] as const)));
  const out = [...before].flatMap(([peg, section]) => (place.has(peg) ? [] : [{ peg, section }]));
  const stay = [...before.keys()].flatMap((peg) => place.get(peg) ?? []);
  const free = problem.pegs.map((_, i) => i).filter((i) => !stay.includes(i));
  if (out.length === 0 || waysToChoose(free.length, out.length) * stay.length > MAX_WAYS) return null;
  const worth = worthVectors(planned.draws);
  const names = namesAlongBank(match, place);
  let best: { readonly plan: Plan; readonly moves: number; readonly meanSquare: number } | null = null;
  for (const fill of choices(free, out.length)) {
    for (const plan of cuts(
      [...stay, ...fill],
      names.map(({ size }) => size),
      problem.problem.isRing,
    )) {
      if (!keepsRules(problem.problem, plan)) continue;
      const moves = plan.reduce(
        (sum, section, s) =>
          sum + section.filter((i) => (before.get(keyOf(i)) ?? names[s]!.name) !== names[s]!.name).length,
        0,
      );
      const { meanSquare } = spreadOf(plan, worth);
      if (best === null || moves < best.moves || (moves === best.moves && meanSquare < best.meanSquare))
        best = { plan, moves, meanSquare };
    }
  }
  if (best === null) return null;
  const pegsOf = new Map(best.plan.map((section, s) => [names[s]!.name, section.map(keyOf)]));
  const sections = match.plan.map(({ name }) => ({ name, pegs: pegsOf.get(name)! }));
  const seated = sections.flatMap(({ name, pegs }) => pegs.map((peg) => ({ peg, section: name })));
  const stillKept = match.kept.filter((peg) => place.has(peg));
  const more = keptPegs(atlas, match, sections).filter((peg) => !stillKept.includes(peg));
  return {
    sections,
    kept: [...stillKept, ...more.slice(0, Math.max(0, match.stepFree - stillKept.length))],
    out,
    in: seated.filter(({ peg }) => !before.has(peg)),
    moved: seated.flatMap((seat) => {
      const from = before.get(seat.peg);
      return from === undefined || from === seat.section ? [] : [{ ...seat, from }];
    }),
    spread: Math.sqrt(best.meanSquare),
  };
}

/** The sections of a match in their order along the bank, with how many pegs each holds. */
function namesAlongBank(
  match: Match,
  place: ReadonlyMap<PegKey, number>,
): { readonly name: string; readonly size: number }[] {
  const own = match.plan.map(({ name, pegs }) => ({
    name,
    size: pegs.length,
    places: pegs.flatMap((peg) => place.get(peg) ?? []),
  }));
  const order = planInOrder(own.map(({ places }) => places).filter(({ length }) => length > 0)).flat();
  return own.sort((a, b) => order.indexOf(a.places[0] ?? -1) - order.indexOf(b.places[0] ?? -1));
}

/** Places in the order of the bank, cut into sections of these sizes; on a ring from each of them on. */
function* cuts(chosen: readonly number[], sizes: readonly number[], isRing: boolean): Generator<Plan> {
  const along = [...chosen].sort((a, b) => a - b);
  for (let turn = 0; turn < (isRing ? along.length : 1); turn++) {
    const turned = [...along.slice(turn), ...along.slice(0, turn)];
    const starts = sizes.map((_, s) => sizes.slice(0, s).reduce((sum, size) => sum + size, 0));
    yield starts.map((start, s) => turned.slice(start, start + sizes[s]!));
  }
}

/** Every choice of so many of some places. */
function* choices(free: readonly number[], count: number): Generator<readonly number[]> {
  if (count === 0) return yield [];
  for (const [i, first] of free.entries()) {
    for (const more of choices(free.slice(i + 1), count - 1)) yield [first, ...more];
  }
}

function waysToChoose(free: number, count: number): number {
  let ways = 1;
  for (let i = 0; i < count; i++) ways *= (free - i) / (i + 1);
  return ways;
}
