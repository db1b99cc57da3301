import type { Match, Scoring } from '../domain/match.ts';
import { pegKey } from '../domain/peg.ts';
import { pegVerdict } from '../domain/peg-verdict.ts';
import type { Atlas } from './atlas.ts';
import { waterOf } from './atlas.ts';
import type { MatchPage } from './match-page.ts';
import { factsOfPeg } from './peg-verdicts.ts';

/** A peg as the phone's scales and draw name it. */
export interface DayPeg {
  readonly key: string;
  /** `23`, or `Kiln Pool 23` in a match over several waters. */
  readonly name: string;
  readonly limits: string;
  readonly isKept: boolean;
}

/** What the organiser's phone needs of a match, as plain data in its page. */
export interface MatchDayData {
  readonly match: string;
  readonly name: string;
  readonly venue: string;
  readonly weightUnit: 'lb' | 'kg';
  readonly parts: readonly { readonly id: string; readonly name: string }[];
  readonly sections: readonly { readonly name: string; readonly pegs: readonly DayPeg[] }[];
  /** Open pegs of these waters that are not in the plan: where somebody may be moved to. */
  readonly spare: readonly DayPeg[];
  readonly scoring: Scoring & { readonly places: number };
  readonly pot: readonly number[];
  /** Whether names may leave the screen, on paper or in a table. */
  readonly namesAgreed: boolean;
}

/** Puts together what the phone needs. */
function matchDayData(atlas: Atlas, match: Match, page: MatchPage): MatchDayData {
  const { settings } = atlas.venue;
  const planned = new Set(match.plan.flatMap(({ pegs }) => pegs));
  const name = (water: string, peg: string) => (page.severalWaters ? `${waterOf(atlas, water).name} ${peg}` : peg);
  return {
    match: match.id,
    name: match.name,
    venue: settings.name,
    weightUnit: settings.units.weight,
    parts: settings.bagParts.map(({ id, name: part }) => ({ id, name: part })),
    sections: page.sections.map((section) => ({
      name: section.name,
      pegs: section.pegs.map(({ key, peg, limits, isKept }) => ({
        key,
        name: name(key.slice(0, key.indexOf('/')), peg),
        limits,
        isKept,
      })),
    })),
    spare: match.waters
      .flatMap((water) => atlas.pegsByWater.get(water) ?? [])
      .filter((peg) => !planned.has(pegKey(peg.water, peg.peg)))
      .filter((peg) => pegVerdict(factsOfPeg(atlas, peg), match.day).state !== 'closed')
      .map((peg) => ({ key: pegKey(peg.water, peg.peg), name: name(peg.water, peg.peg), limits: '', isKept: false })),
    scoring: { ...match.scoring, places: match.places },
    pot: match.pot,
    namesAgreed: match.namesAgreed,
  };
}

/** The same as text for a script element: nothing in it can end the element. */
export function matchDayJson(atlas: Atlas, match: Match, page: MatchPage): string {
  return JSON.stringify(matchDayData(atlas, match, page)).replaceAll('<', '\\u003c');
}
