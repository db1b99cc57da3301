import { firstExpectedBags, firstForm } from './first-form.ts';
import { fishSizes } from './fish-sizes.ts';
import { framingMakeUp } from './framing-make-up.ts';
import { framingMonths } from './framing-months.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { Ratings } from './ratings.ts';
import { sessionsInModel } from './sessions-in-model.ts';

export interface RateOptions {
  /** Of the simulated fields; the same seed gives the same bytes. */
  readonly seed: number;
  /** Told what is being worked on, for a person who waits. */
  readonly progress?: (what: string) => void;
}

/** Rates a checked venue: every table the guide publishes about returns, from its log alone. */
export function rateVenue(venue: RatedVenue, options: RateOptions): Ratings {
  options.progress?.('total');
  const logged = venue.settings.bagParts.filter(({ id }) =>
    venue.sessions.some((session) => session.parts[id]?.weightGrams !== undefined),
  );
  const bags = [firstForm(venue, 'total'), ...logged.map(({ id }) => firstForm(venue, id))];
  const framing = framingMonths(venue);
  return {
    bags,
    framing,
    expectedBags: firstExpectedBags(venue, bags, framing),
    framingMakeUp: framingMakeUp(venue),
    featureTemperatures: [],
    fishSizes: fishSizes(venue),
    choices: [],
    backtest: null,
    leftOut: sessionsInModel(venue, 'total').leftOut,
    withoutDnw: null,
    notes: [],
  };
}
