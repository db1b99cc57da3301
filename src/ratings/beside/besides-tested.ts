import { pegKey } from '../../domain/peg.ts';
import { type ForecastEvent, scoreForecasts } from '../forecast-score.ts';
import type { FittedPast } from '../forecasters.ts';
import type { RatedVenue } from '../rated-venue.ts';
import type { BesideTest } from '../ratings.ts';
import { standsInLog } from '../stands-in-log.ts';
import { worthCombinations } from '../worth-combinations.ts';
import type { BesideTerm } from './beside-term.ts';
import { besideOffers, fitBeside } from './fit-beside.ts';

/** Twice a log likelihood that one log in twenty gives a spread that is not there: half of it is zero, half chi-squared on 1. */
const ASKED_ABOVE = 2.706;
/** A gain of this many standard errors over the events is hardly luck. */
const GAIN_ABOVE = 1;
/** One log in two hundred gives so much to a spread that is not there: then any gain will do. */
const ASKED_LOUDLY_ABOVE = 6.635;

/**
 * Every term beside the model, learned from the years before the one under test and held against it. A term earns its place where
 * those years asked for it and it then made the forecasts better, by more than luck or by anything where they asked loudly. Of 120
 * terms on 40 simulated venues where none did anything, none earned a place.
 */
export function besidesTested(
  venue: RatedVenue,
  past: FittedPast,
  events: readonly ForecastEvent[],
): readonly BesideTest[] {
  return besideOffers(venue, past.sessions).map((offer) => {
    if ('why' in offer) return offer;
    const { logGain, added } = additions(venue, offer.term, past, events);
    const withTerm = events.map(({ sessions, forecasts }, e) => ({
      sessions,
      forecasts: forecasts.map((each, i) => ({ ...each, logWorth: each.logWorth + added[e]![i]! })),
    }));
    const errorOf = (of: readonly ForecastEvent[]) => scoreForecasts(of).rootMeanSquareError;
    const gains = events.map((event, i) => errorOf([event]) ** 2 - errorOf([withTerm[i]!]) ** 2);
    const gainInErrors = inErrors(gains);
    const asked = 2 * logGain;
    return {
      of: offer.of,
      errorWith: errorOf(withTerm),
      errorWithout: errorOf(events),
      gainInErrors,
      asked,
      isEarned: gainInErrors > (asked > ASKED_LOUDLY_ABOVE ? 0 : GAIN_ABOVE) && asked > ASKED_ABOVE,
    };
  });
}

/** What a term learned from the past adds to each forecast, the peg's own worth having made room for it. */
function additions(
  venue: RatedVenue,
  term: BesideTerm,
  { model, fit, sessions: past, season }: FittedPast,
  events: readonly ForecastEvent[],
) {
  const fitted = fitBeside(term, { latent: model.latent, fit, sessions: past });
  const { ofPegOn } = worthCombinations(venue, model);
  const stands = standsInLog(venue);
  const sessions = events.flatMap((event) => event.sessions);
  const pegs = sessions.map(({ session, event }) =>
    ofPegOn(stands.get(pegKey(session.water, session.peg))!, event.day, season.positionOf(event)),
  );
  const nothing = new Array<number>(term.columns).fill(0);
  const weights = fitted.besides(
    pegs,
    sessions.map((session) => term.weightsOf(session) ?? nothing),
  );
  const means = weights.map((row) => fitted.posterior(row).mean);
  let next = 0;
  return { logGain: fitted.logGain, added: events.map((event) => event.sessions.map(() => means[next++]!)) };
}

/** The mean of some gains in its own standard errors; 0 where one alone has none. */
function inErrors(gains: readonly number[]): number {
  const mean = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
  const scatter = gains.reduce((sum, gain) => sum + (gain - mean) ** 2, 0) / Math.max(1, gains.length - 1);
  return gains.length > 1 && scatter > 0 ? mean / Math.sqrt(scatter / gains.length) : 0;
}
