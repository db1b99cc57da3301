import type { Day } from '../domain/day.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import { decidingFacts, hazardsOfWholeWater, pegFacts } from '../domain/peg-facts.ts';
import {
  type ClosedVerdict,
  changesWithDay,
  type PegFacts,
  type PegVerdict,
  pegVerdict,
} from '../domain/peg-verdict.ts';
import { closedBecause, closedHeadline, closedReason } from '../domain/verdict-words.ts';
import { type Atlas, surveyOfPeg, waterOf } from './atlas.ts';

/** Everything known about a peg that decides whether it may be fished. */
export function factsOfPeg(atlas: Atlas, peg: Peg): PegFacts {
  const { notices, settings } = atlas.venue;
  const { lines } = surveyOfPeg(atlas, pegKey(peg.water, peg.peg));
  return pegFacts(peg, notices, lines, settings, hazardsOfWholeWater(waterOf(atlas, peg.water)));
}

/** The verdict on a peg for the day of the guide. */
export function verdictOfPeg(atlas: Atlas, peg: Peg): PegVerdict {
  return pegVerdict(factsOfPeg(atlas, peg), atlas.venue.settings.guideDay);
}

/** How a peg stands wherever it is named: on the day of the guide, and what a phone needs for the day it is read. */
export interface PegStanding {
  /** Null while it is not closed. */
  readonly closed: { readonly headline: string; readonly reason: string; readonly because: string } | null;
  /** Facts as JSON where a notice closes or reopens the peg on a later day; undefined where every day has one verdict. */
  readonly dated?: string;
}

/** How a peg stands on the day of the guide, and whether that may change on a later one. */
export function standingOfPeg(atlas: Atlas, peg: Peg): PegStanding {
  const facts = factsOfPeg(atlas, peg);
  const { guideDay } = atlas.venue.settings;
  const verdict = pegVerdict(facts, guideDay);
  return {
    closed: verdict.state === 'closed' ? closedWords(verdict) : null,
    ...(changesWithDay(facts, guideDay) ? { dated: JSON.stringify(decidingFacts(facts)) } : {}),
  };
}

/** Whether a peg is closed on every day there is: then nothing is said of what it is worth. */
export function isClosedForEver({ closed, dated }: PegStanding): boolean {
  return closed !== null && dated === undefined;
}

/** The same for a drawing. */
export function markOf({ closed, ...dated }: PegStanding): { readonly closed: boolean; readonly dated?: string } {
  return { closed: closed !== null, ...dated };
}

function closedWords(verdict: ClosedVerdict): NonNullable<PegStanding['closed']> {
  return { headline: closedHeadline(verdict), reason: closedReason(verdict), because: closedBecause(verdict) };
}

/** How many of some pegs are closed on the day of the guide. */
export function closedCount(atlas: Atlas, pegs: readonly Peg[]): number {
  return pegs.filter((peg) => verdictOfPeg(atlas, peg).state === 'closed').length;
}

/** The verdicts of a venue as one piece of plain data, from which any phone works out any day by `pegVerdict`. */
export interface VenueVerdicts {
  readonly guideDay: Day;
  /** By peg, what decides and nothing else; a peg that is open on every day is left out. */
  readonly facts: Readonly<Record<PegKey, PegFacts>>;
  /** Every peg of the guide, so that one without facts is known to be open and one that is missing to be unknown. */
  readonly pegs: readonly PegKey[];
}

/** What the phone needs to show nothing more open than the newest guide does: all pegs, with what decides about each. */
export function venueVerdicts(atlas: Atlas): VenueVerdicts {
  const { guideDay } = atlas.venue.settings;
  const all = atlas.venue.pegs.map(
    (peg) => [pegKey(peg.water, peg.peg), decidingFacts(factsOfPeg(atlas, peg))] as const,
  );
  return {
    guideDay,
    facts: Object.fromEntries(
      all.filter(([, facts]) => pegVerdict(facts, guideDay).state !== 'open' || changesWithDay(facts, guideDay)),
    ),
    pegs: all.map(([key]) => key),
  };
}
