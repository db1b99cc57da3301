import type { Session } from '../domain/session.ts';
import type { BagModel } from './bag-model.ts';
import type { LinearCombination } from './engine/latent-model.ts';
import { fitRatings, startFrom } from './fit-ratings.ts';
import type { FitListener } from './fit-report.ts';
import type { RatedVenue } from './rated-venue.ts';
import { ratingModel, TERM } from './rating-model.ts';
import type { ChoiceReturn } from './ratings.ts';
import { answers, type Question } from './returns.ts';
import { MONTH_SEASON } from './season.ts';

type About = ChoiceReturn['about'];

/** What may be chosen, and where a session says so. */
const CHOICES: Readonly<Record<About, (session: Session) => string | undefined>> = {
  spot: (session) => session.spot,
  method: (session) => session.method,
  bait: (session) => session.bait,
  lines: (session) => (session.linesFed === undefined ? undefined : String(session.linesFed)),
};

/**
 * What anglers did and its return, beside what the same peg, day and angler would do: the monthly model with the choice
 * as one term more, once for each kind of choice. A return stands against the water's mean over the sessions that tell
 * theirs; those that do not tell share a level of their own. Chosen, not drawn: good anglers may choose alike, and a
 * choice may follow the fish rather than catch them.
 */
export function choiceReturns(venue: RatedVenue, total: BagModel, listener: FitListener = {}): ChoiceReturn[] {
  return (Object.keys(CHOICES) as About[]).flatMap((about) => {
    const told = total.sessions.map(({ session }) => CHOICES[about](session));
    if (told.every((value) => value === undefined)) return [];
    listener.progress?.(`what anglers chose: ${about}`);
    return choiceTable(about, told, venue, total, listener);
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
  { report }: FitListener,
): ChoiceReturn[] {
  const choices = new Map<string, Choice>();
  const levels = total.sessions.map(({ session }, i) => {
    const value = told[i];
    const key = JSON.stringify([session.water, value]);
    const choice = choices.get(key) ?? { water: session.water, value, column: choices.size, sessions: 0 };
    choices.set(key, choice);
    choice.sessions += 1;
    return choice.column;
  });
  const model = ratingModel(venue, total.sessions, MONTH_SEASON, total.model.asked, { columns: choices.size, levels });
  // What the bags say of days, anglers and pegs is known from the main fit; only the choice's spread is new.
  const fit = fitRatings(model.latent, { start: startFrom(total.fit), hold: { sd: total.fit.sd } });
  report?.(`choice of ${about}`, fit);
  const rows = venue.waters.flatMap(({ id }) => {
    const ofWater = [...choices.values()]
      .filter(({ water, value }) => water === id && value !== undefined)
      .sort((a, b) => byNumber.compare(a.value!, b.value!));
    // Where all chose alike there is nothing to compare.
    if (ofWater.length < 2) return [];
    const mean = meanOf(ofWater);
    return ofWater.map((choice) => ({
      choice,
      sessions: choice.sessions,
      combination: { effects: [{ term: TERM.choice, column: choice.column, weight: 1 }], less: mean },
    }));
  });
  const question: Question<ChoiceReturn> = {
    asked: rows,
    read: (rowsTold) =>
      rowsTold.map(({ logReturn, low80, high80, sessions, evidence }, i) => ({
        water: rows[i]!.choice.water,
        about,
        value: rows[i]!.choice.value!,
        sessions,
        return: Math.exp(logReturn),
        low80,
        high80,
        evidence,
      })),
  };
  return answers({ model, fit }, [question] as const)[0];
}

const byNumber = new Intl.Collator('en', { numeric: true });

function meanOf(choices: readonly Choice[]): LinearCombination {
  const all = choices.reduce((sum, { sessions }) => sum + sessions, 0);
  return {
    effects: choices.map(({ column, sessions }) => ({ term: TERM.choice, column, weight: sessions / all })),
  };
}
