import { backtest } from './backtest.ts';
import { bagTables, fitBag, rateBag } from './bag-model.ts';
import { choiceReturns } from './choice-returns.ts';
import { expectedBags } from './expected-bags.ts';
import { featureTemperatures } from './feature-temperatures.ts';
import { firstLook } from './first-look.ts';
import { fishSizes } from './fish-sizes.ts';
import { startFrom } from './fit-ratings.ts';
import { framingMakeUp } from './framing-make-up.ts';
import { framingMonths } from './framing-months.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { Ratings } from './ratings.ts';
import { sessionsInModel } from './sessions-in-model.ts';
import { whatCannotBeTold } from './what-cannot-be-told.ts';
import { withoutDnw } from './without-dnw.ts';

export interface RateOptions {
  /** Of the simulated fields; the same seed gives the same bytes. */
  readonly seed: number;
  /** Told what is being worked on, for a person who waits. */
  readonly progress?: (what: string) => void;
}

/** Rates a checked venue: every table the guide publishes about returns, from its log alone. */
export function rateVenue(venue: RatedVenue, { seed, progress }: RateOptions): Ratings {
  const parts = venue.settings.bagParts.filter(({ id }) =>
    venue.sessions.some((session) => (session.parts[id]?.weightGrams ?? 0) > 0),
  );
  progress?.('first look');
  const look = firstLook(venue);
  const choice = { dnw: look.lesson.mechanism ?? undefined, asked: look.asked };
  progress?.('whole bag');
  const total = rateBag(venue, fitBag(venue, 'total', choice, look.start === null ? {} : { start: look.start }));
  const ofParts = parts.map(({ id, name }) => {
    progress?.(name.toLowerCase());
    return rateBag(venue, fitBag(venue, id, choice, { start: startFrom(total.fitted.fit) }));
  });
  const tables = [total, ...ofParts].map(bagTables);
  progress?.('chance to frame');
  const expected = expectedBags(venue, [total, ...ofParts], seed);
  progress?.('water temperature');
  const temperatures = featureTemperatures(venue, total.fitted);
  const choices = choiceReturns(venue, total.fitted, progress);
  const sensitivity = withoutDnw(venue, look, tables[0]!);
  const { sessions } = total.fitted;
  return {
    bags: tables,
    framing: framingMonths(venue),
    expectedBags: expected,
    framingMakeUp: framingMakeUp(venue),
    featureTemperatures: temperatures,
    fishSizes: fishSizes(venue),
    choices,
    backtest: backtest(venue, sessions, progress),
    leftOut: sessionsInModel(venue, 'total').leftOut,
    withoutDnw: sensitivity,
    notes: whatCannotBeTold(venue, sessions),
  };
}
