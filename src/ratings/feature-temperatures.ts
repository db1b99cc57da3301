import type { FitOptions, LatentFit } from './engine/latent-model.ts';
import { featureQuestion } from './feature-worth.ts';
import { fitRatings } from './fit-ratings.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type RatingModel, ratingModel } from './rating-model.ts';
import type { FeatureTemperature } from './ratings.ts';
import { type ModelSession, type SessionChoice, sessionsInModel, tellingSessions } from './sessions-in-model.ts';
import { type TemperatureSeason, temperatureSeason } from './temperature-season.ts';
import { answers } from './worth.ts';

/** The model by water temperature in place of the month, fitted, with the sessions it was fitted to. */
interface TemperatureModel {
  readonly season: TemperatureSeason;
  readonly sessions: readonly ModelSession[];
  readonly model: RatingModel;
  readonly fit: LatentFit;
}

/**
 * Fits the model of the total bag with a walk along bands of 2 °C that is not cyclic, over the sessions of events that log the temperature. Null
 * where too few do.
 */
export function fitTemperatures(
  venue: RatedVenue,
  choice: SessionChoice = {},
  options: FitOptions = {},
): TemperatureModel | null {
  const all = tellingSessions(sessionsInModel(venue, 'total', choice).sessions);
  const season = temperatureSeason(all.map(({ event }) => event));
  if (season === null) return null;
  const sessions = all.filter(({ event }) => season.positionOf(event) !== null);
  const model = ratingModel(venue, sessions, season);
  return { season, sessions, model, fit: fitRatings(model.latent, options) };
}

/** The features' worth by water temperature. */
export function featureTemperatures(
  venue: RatedVenue,
  { season, sessions, model, fit }: TemperatureModel,
): FeatureTemperature[] {
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
