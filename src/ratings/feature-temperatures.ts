import type { BagModel } from './bag-model.ts';
import { featureQuestion } from './feature-worth.ts';
import { fitRatings, startFrom } from './fit-ratings.ts';
import type { FitListener, FitStart } from './fit-report.ts';
import type { RatedVenue } from './rated-venue.ts';
import { ratingModel } from './rating-model.ts';
import type { FeatureTemperature } from './ratings.ts';
import { temperatureSeason } from './season.ts';
import { answers } from './worth.ts';

/**
 * The features' worth by water temperature in place of the month: the same model with a walk along bands of 2 °C that
 * is not cyclic, over the sessions of events that log the temperature. Empty where too few do.
 * @param start From an earlier state of this log; else the search begins from the monthly model.
 */
export function featureTemperatures(
  venue: RatedVenue,
  total: BagModel,
  { report, start }: Pick<FitListener, 'report'> & { readonly start?: FitStart } = {},
): FeatureTemperature[] {
  const season = temperatureSeason(total.sessions.map(({ event }) => event));
  if (season === null) return [];
  const sessions = total.sessions.filter(({ event }) => season.positionOf(event) !== null);
  const model = ratingModel(venue, sessions, season);
  const fit = fitRatings(model.latent, { start: start ?? startFrom(total.fit) });
  report?.('water temperature', fit);
  const [rows] = answers({ model, fit }, [featureQuestion(venue, sessions, model)] as const);
  return rows.map(({ feature, position, logWorth, sd, low80, high80, sessions: count, evidence }) => ({
    feature,
    fromDegreesC: season.bandsFrom[position]!,
    logWorth,
    sd,
    low80,
    high80,
    sessions: count,
    evidence,
  }));
}
