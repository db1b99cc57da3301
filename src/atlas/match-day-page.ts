import type { Day } from '../domain/day.ts';
import type { Match, Scoring } from '../domain/match.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { pegVerdict } from '../domain/peg-verdict.ts';
import type { NamedPeg } from '../domain/typed-peg.ts';
import type { Atlas } from './atlas.ts';
import { waterOf } from './atlas.ts';
import type { MatchPage } from './match-page.ts';
import { limitWords } from './peg-safety.ts';
import { factsOfPeg } from './peg-verdicts.ts';
import { scriptJson } from './script-json.ts';

/** A peg as the phone's scales and draw name it. */
export interface DayPeg extends NamedPeg {
  readonly key: string;
  /** `23`, or `Kiln Pool 23` in a match over several waters. */
  readonly name: string;
  readonly limits: string;
  readonly isKept: boolean;
  /** Why it may not be fished that day; empty where it may. */
  readonly closed: string;
}

/** What the organiser's phone needs of a match, as plain data in its page. */
export interface MatchDayData {
  readonly match: string;
  readonly name: string;
  readonly day: Day;
  readonly venue: string;
  /** The day of the guide's data: a phone's clock that is behind it is wrong. */
  readonly guideDay: Day;
  /** The heaviest bag in the log of these waters; 0 where there is none. */
  readonly heaviestGrams: number;
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
  const dayPeg = (key: PegKey, limits = '', isKept = false, closed = ''): DayPeg => {
    const peg = key.slice(key.indexOf('/') + 1);
    const water = waterOf(atlas, key.slice(0, key.indexOf('/'))).name;
    return { key, water, peg, name: page.severalWaters ? `${water} ${peg}` : peg, limits, isKept, closed };
  };
  return {
    match: match.id,
    name: match.name,
    day: match.day,
    venue: settings.name,
    guideDay: settings.guideDay,
    heaviestGrams: heaviestBag(atlas, match),
    weightUnit: settings.units.weight,
    parts: settings.bagParts.map(({ id, name: part }) => ({ id, name: part })),
    sections: page.sections.map((section) => ({
      name: section.name,
      pegs: section.pegs.map(({ key, limits, isKept, closedThatDay }) =>
        dayPeg(key, limits, isKept, closedThatDay ?? ''),
      ),
    })),
    spare: match.waters
      .flatMap((water) => atlas.pegsByWater.get(water) ?? [])
      .filter((peg) => !planned.has(pegKey(peg.water, peg.peg)))
      .filter((peg) => pegVerdict(factsOfPeg(atlas, peg), match.day).state !== 'closed')
      .map((peg) => dayPeg(pegKey(peg.water, peg.peg), limitWords(peg, settings).join(', '))),
    scoring: { ...match.scoring, places: match.places },
    pot: match.pot,
    namesAgreed: match.namesAgreed,
  };
}

function heaviestBag({ venue }: Atlas, match: Match): number {
  const events = new Set(venue.events.flatMap(({ id, water }) => (match.waters.includes(water) ? [id] : [])));
  return venue.sessions.reduce(
    (most, { event, weightGrams = 0 }) => (events.has(event) ? Math.max(most, Math.round(weightGrams)) : most),
    0,
  );
}

/** The same as text for a script element: nothing in it can end the element. */
export function matchDayJson(atlas: Atlas, match: Match, page: MatchPage): string {
  return scriptJson(matchDayData(atlas, match, page));
}
