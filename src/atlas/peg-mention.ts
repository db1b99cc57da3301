import type { Peg } from '../domain/peg.ts';
import type { Atlas } from './atlas.ts';
import { type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** A peg where a page names it: its number, the way to its sheet, and what closes it. */
export interface PegMention {
  /** As painted on the post. */
  readonly peg: string;
  readonly href: string;
  readonly standing: PegStanding;
}

/** Names a peg. */
export function pegMention(atlas: Atlas, peg: Peg): PegMention {
  return { peg: peg.peg, href: pegLink(peg.water, peg.peg), standing: standingOfPeg(atlas, peg) };
}

/** Those of a water's pegs that are closed, or are on a day to come, each cause told once. */
export function closedAlike(
  pegs: readonly PegMention[],
): readonly { readonly pegs: readonly PegMention[]; readonly standing: PegStanding }[] {
  const concerned = pegs.filter(({ standing }) => standing.closed !== null || standing.dated !== undefined);
  const alike = Map.groupBy(concerned, ({ standing }) => standing.dated ?? standing.closed?.because);
  return [...alike.values()].map((group) => ({ pegs: group, standing: group[0]!.standing }));
}
