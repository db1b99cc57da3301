import { pegKey } from '../domain/peg.ts';
import { featuresOn } from '../domain/stand.ts';
import type { LatentFit } from './engine/latent-model.ts';
import { interval80 } from './interval.ts';
import { unitVariance } from './prior-sd.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type RatingModel, TERM } from './rating-model.ts';
import type { ModelSession } from './sessions-in-model.ts';
import { standsInLog } from './stands-in-log.ts';
import type { Question, WorthEstimate } from './worth.ts';
import { worthCombinations } from './worth-combinations.ts';

/** A feature's worth at a position of the season (a month, a band of temperature). */
export interface FeatureWorth extends WorthEstimate {
  readonly feature: string;
  readonly position: number;
}

/**
 * Asks for the worth of every feature at every position of the season, in the venue's order of features. Where no
 * session was fished on the feature it is thin, however well its neighbours are known. A feature that is part of par
 * wherever it stands has no worth to tell: it is stated at par, as wide as the prior.
 */
export function featureQuestion(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  model: RatingModel,
): Question<FeatureWorth> {
  const counts = featureCounts(venue, sessions, model);
  const { ofFeature } = worthCombinations(venue, model);
  const places = model.shares.features.flatMap((feature) =>
    Array.from({ length: model.season.positions }, (_, position) => ({
      feature,
      position,
      sessions: counts.get(`${feature} ${position}`) ?? 0,
    })),
  );
  const told = places.filter(({ feature }) => model.shares.contrastOf(feature) > 0);
  return {
    asked: told.map(({ feature, position, sessions: count }) => ({
      combination: ofFeature(feature, position),
      sessions: count,
    })),
    read: (answers, fit) => {
      const found = new Map(told.map((place, i) => [place, answers[i]!]));
      return places.map((place): FeatureWorth => {
        const row = found.get(place) ?? untold(place, model, fit);
        return { ...row, ...place, evidence: place.sessions === 0 ? 'thin' : row.evidence };
      });
    },
  };
}

/** Spread of a feature's effect where the venue has none that could tell: about a factor of 1.3 either way. */
const NOTHING_KNOWN = 0.3;

function untold(
  { position, sessions }: { readonly position: number; readonly sessions: number },
  model: RatingModel,
  fit: LatentFit,
): WorthEstimate {
  const level = fit.sd[TERM.feature] ?? NOTHING_KNOWN;
  const season = (fit.sd[TERM.season] ?? NOTHING_KNOWN) * Math.sqrt(unitVariance(model.season.prior, position));
  const wave = model.season.waves === null ? 0 : (fit.sd[TERM.wave] ?? 0);
  const sd = Math.hypot(level, season, wave);
  return { logWorth: 0, sd, priorSd: sd, ...interval80(0, sd), sessions, evidence: 'thin' };
}

/** Sessions on pegs with a feature, by feature and position. */
function featureCounts(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  { season }: RatingModel,
): ReadonlyMap<string, number> {
  const stands = standsInLog(venue);
  const counts = new Map<string, number>();
  for (const { session, event } of sessions) {
    const position = season.positionOf(event);
    const stand = stands.get(pegKey(session.water, session.peg));
    for (const feature of stand === undefined ? [] : new Set(featuresOn(stand, event.day))) {
      const key = `${feature} ${position}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  }
  return counts;
}
