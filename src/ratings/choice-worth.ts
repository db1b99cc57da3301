import type { Session } from '../domain/session.ts';
import type { BagModel } from './bag-model.ts';
import { borderedTerm } from './bordered-term.ts';
import { factorRows } from './engine/sparse-rows.ts';
import { evidenceOf } from './evidence.ts';
import { CHOICE_SD } from './fit-ratings.ts';
import { type FitListener, isSettled } from './fit-report.ts';
import { interval80 } from './interval.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { ChoiceWorth } from './ratings.ts';

type About = ChoiceWorth['about'];

/** What may be chosen, and where a session says so. */
const CHOICES: Readonly<Record<About, (session: Session) => string | undefined>> = {
  spot: (session) => session.spot,
  method: (session) => session.method,
  bait: (session) => session.bait,
  lines: (session) => (session.linesFed === undefined ? undefined : String(session.linesFed)),
};

/**
 * What anglers did and its worth, beside what the same peg, day and angler would do: the monthly model with the choice
 * as one term more, once for each kind of choice: what the bags say of days, anglers and pegs is known, only the choice is new. A worth stands against the water's mean over the sessions that tell
 * theirs; those that do not tell share a level of their own. Chosen, not drawn: good anglers may choose alike, and a
 * choice may follow the fish rather than catch them.
 */
export function choiceWorths(
  venue: RatedVenue,
  total: BagModel,
  listener: Pick<FitListener, 'progress'> = {},
): ChoiceWorth[] {
  return (Object.keys(CHOICES) as About[]).flatMap((about) => {
    const told = total.sessions.map(({ session }) => CHOICES[about](session));
    if (told.every((value) => value === undefined)) return [];
    listener.progress?.(`what anglers chose: ${about}`);
    return choiceTable(about, told, venue, total);
  });
}

interface Choice {
  readonly water: string;
  readonly value: string | undefined;
  readonly column: number;
  sessions: number;
}

function choiceTable(
  about: About,
  told: readonly (string | undefined)[],
  venue: RatedVenue,
  total: BagModel,
): ChoiceWorth[] {
  const choices = new Map<string, Choice>();
  const levels = total.sessions.map(({ session }, i) => {
    const value = told[i];
    const key = JSON.stringify([session.water, value]);
    const choice = choices.get(key) ?? { water: session.water, value, column: choices.size, sessions: 0 };
    choices.set(key, choice);
    choice.sessions += 1;
    return choice.column;
  });
  const term = borderedTerm(
    total.model.latent,
    total.fit,
    { columns: choices.size, rows: factorRows(levels) },
    CHOICE_SD,
  );
  return venue.waters.flatMap(({ id }) => {
    const ofWater = [...choices.values()]
      .filter(({ water, value }) => water === id && value !== undefined)
      .sort((a, b) => byNumber.compare(a.value!, b.value!));
    // Where all chose alike there is nothing to compare.
    if (ofWater.length < 2) return [];
    const all = ofWater.reduce((sum, { sessions }) => sum + sessions, 0);
    return ofWater.map(({ column: own, value, sessions }): ChoiceWorth => {
      const weights = new Array<number>(choices.size).fill(0);
      for (const { column, sessions: count } of ofWater) weights[column] = (column === own ? 1 : 0) - count / all;
      const { mean, sd } = term.posterior(weights);
      const before = term.sd * Math.hypot(...weights);
      return {
        water: id,
        about,
        value: value!,
        sessions,
        worth: Math.exp(mean),
        ...interval80(mean, sd),
        evidence: isSettled(total.fit) ? evidenceOf(sd, before) : 'thin',
      };
    });
  });
}

const byNumber = new Intl.Collator('en', { numeric: true });
