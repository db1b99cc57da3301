import type { RatedVenue } from './rated-venue.ts';

/** Where the features of a venue stand. */
export interface FeatureShares {
  /** Features that some peg has, in the venue's order. */
  readonly features: readonly string[];
  /** Share of a water's pegs with the feature, 0 to 1. */
  readonly shareOf: (water: string, feature: string) => number;
  /**
   * What a feature's own effect must be multiplied by to give its worth: one less the share of pegs that have it, for
   * par counts them too; averaged over the waters as the pegs that have it lie. 0 where it stands on every peg of its waters.
   */
  readonly contrastOf: (feature: string) => number;
}

/** Counts which features stand where. */
export function featureShares(venue: RatedVenue): FeatureShares {
  const pegs = new Map<string, number>();
  const carriers = new Map<string, Map<string, number>>();
  for (const { water, features } of venue.pegs) {
    pegs.set(water, (pegs.get(water) ?? 0) + 1);
    for (const feature of new Set(features)) {
      const byWater = carriers.get(feature) ?? new Map<string, number>();
      carriers.set(feature, byWater.set(water, (byWater.get(water) ?? 0) + 1));
    }
  }
  const shareOf = (water: string, feature: string) => (carriers.get(feature)?.get(water) ?? 0) / (pegs.get(water) ?? 1);
  return {
    features: venue.settings.features.map(({ id }) => id).filter((id) => carriers.has(id)),
    shareOf,
    contrastOf: (feature) => {
      const counts = [...(carriers.get(feature) ?? [])];
      const all = counts.reduce((sum, [, count]) => sum + count, 0);
      return counts.reduce((sum, [water, count]) => sum + (count / all) * (1 - shareOf(water, feature)), 0);
    },
  };
}
