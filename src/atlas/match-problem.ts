import type { Match } from '../domain/match.ts';
import { isStepFree } from '../domain/match.ts';
import { nameOf } from '../domain/name-of.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import { pegVerdict } from '../domain/peg-verdict.ts';
import { closedBecause } from '../domain/verdict-words.ts';
import { type BankRing, bankRings, keptOnRing, openedAtWidestGap } from '../ground/bank-order.ts';
import { geodesicBetween } from '../ground/geodesy/geodesic-between.ts';
import type { PlanProblem } from '../planning/plan-problem.ts';
import { type Atlas, pegOf, surveyOfPeg } from './atlas.ts';
import { factsOfPeg } from './peg-verdicts.ts';

/** A peg of the match's waters that cannot go in, and why. */
export interface PegNotIn {
  readonly peg: PegKey;
  /** `closed`: by its verdict of that day. `left-out`: by the organiser. `end`: by the club's rule for end pegs. */
  readonly by: 'closed' | 'left-out' | 'end';
  readonly why: string;
}

/** A gap so many times the middle one parts a bank. */
const WIDE_GAPS = 3;

/** A match as a question of planning: the pegs that may go in along the bank, and those that may not. */
export interface MatchProblem {
  readonly pegs: readonly Peg[];
  readonly problem: PlanProblem;
  readonly notIn: readonly PegNotIn[];
}

/** Beyond so many pegs a ring of bank is opened at its widest gap: to turn the sections round it as well would take minutes. */
const MAX_ON_RING = 150;

/**
 * Which pegs may go into a match, in their order along the bank. Whether a peg is closed is its verdict on the day of the
 * match, and nothing the match's file says can put such a peg in.
 */
export function matchProblem(atlas: Atlas, match: Match): MatchProblem {
  const all = match.waters.flatMap((water) => atlas.pegsByWater.get(water) ?? []);
  const closed = all.flatMap((peg): PegNotIn[] => {
    const verdict = pegVerdict(factsOfPeg(atlas, peg), match.day);
    return verdict.state === 'closed' ? [{ peg: keyOf(peg), by: 'closed', why: closedBecause(verdict) }] : [];
  });
  const isClosed = new Set(closed.map(({ peg }) => peg));
  const leftOut = match.leaveOut
    .filter((peg) => !isClosed.has(peg))
    .map((peg): PegNotIn => ({ peg, by: 'left-out', why: 'the organiser leaves it out' }));
  const isOut = new Set([...isClosed, ...match.leaveOut]);
  const rings = ringsOf(atlas, match, (peg) => !isOut.has(peg));
  const ends = new Map(rings.flatMap(({ ring }) => endPegs(atlas, match, ring)));
  const out: PegNotIn[] =
    match.ends.rule === 'left-out' ? [...ends].map(([peg, why]) => ({ peg, by: 'end' as const, why })) : [];
  const isEnd = (peg: PegKey) => ends.has(peg);
  const inMatch = rings.map(({ group, ring }) => ({
    group,
    ring: match.ends.rule === 'left-out' ? keptOnRing(ring, (peg) => !isEnd(peg)) : ring,
  }));
  return { ...laidOut(atlas, match, inMatch, isEnd), notIn: [...closed, ...leftOut, ...out] };
}

interface GroupedRing {
  readonly group: number;
  readonly ring: BankRing;
}

function ringsOf(atlas: Atlas, match: Match, mayGoIn: (peg: PegKey) => boolean): readonly GroupedRing[] {
  return match.waters.flatMap((water, group) => {
    const keys = (atlas.pegsByWater.get(water) ?? []).map(keyOf);
    return bankRings(keys, (peg) => surveyOfPeg(atlas, peg).neighbours)
      .map((ring) => ({ group, ring: keptOnRing(ring, mayGoIn) }))
      .filter(({ ring }) => ring.pegs.length > 0);
  });
}

/** End pegs of a line of bank by the club's rule, with what makes each one. */
function endPegs(atlas: Atlas, { ends }: Match, { pegs, gapMetres }: BankRing): readonly (readonly [PegKey, string])[] {
  return pegs.flatMap((peg, i) => {
    const feature = pegOf(atlas, peg).features.find((id) => ends.features.includes(id));
    if (feature !== undefined) {
      const name = nameOf(atlas.venue.settings.features, feature);
      return [[peg, name.toLowerCase()] as const];
    }
    const widest = Math.max(gapMetres[i]!, gapMetres.at(i - 1)!);
    return ends.gapMetres !== undefined && widest > ends.gapMetres ? [[peg, 'nobody on one hand'] as const] : [];
  });
}

/** A closed stretch or a dam without pegs is where a bank ends: a section over it would be two. */
function staysRing({ pegs, gapMetres }: BankRing): boolean {
  const sorted = [...gapMetres].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
  return pegs.length > 1 && pegs.length <= MAX_ON_RING && sorted.at(-1)! <= WIDE_GAPS * middle;
}

/** Lays lines of bank end to end. One ring of one water stays a ring, so that sections may be turned round it. */
function laidOut(
  atlas: Atlas,
  match: Match,
  rings: readonly GroupedRing[],
  isEnd: (peg: PegKey) => boolean,
): Omit<MatchProblem, 'notIn'> {
  const filled = rings.filter(({ ring }) => ring.pegs.length > 0);
  const isRing = filled.length === 1 && staysRing(filled[0]!.ring);
  const lines = isRing ? filled : filled.map(({ group, ring }) => ({ group, ring: openedAtWidestGap(ring) }));
  const pegs = lines.flatMap(({ ring }) => ring.pegs.map((peg) => pegOf(atlas, peg)));
  const gapMetres = lines.flatMap(({ ring, group }, i) => {
    if (isRing) return ring.gapMetres;
    const next = lines[i + 1];
    const beyond =
      next === undefined || next.group !== group
        ? Number.POSITIVE_INFINITY
        : geodesicBetween(pegOf(atlas, ring.pegs.at(-1)!).at, pegOf(atlas, next.ring.pegs[0]!).at).distanceMetres;
    return [...ring.gapMetres.slice(0, -1), beyond];
  });
  return {
    pegs,
    problem: {
      places: lines.flatMap(({ group, ring }) =>
        ring.pegs.map((peg) => ({ group, isStepFree: isStepFree(pegOf(atlas, peg)), isEnd: isEnd(peg) })),
      ),
      gapMetres,
      isRing,
      entries: match.entries,
      sections: match.sections,
      apartMetres: match.apartMetres,
      stepFree: match.stepFree,
      mostEnds: match.ends.rule === 'one-a-section' ? 1 : null,
    },
  };
}

function keyOf({ water, peg }: Peg): PegKey {
  return pegKey(water, peg);
}
