import { type PegKey, pegKey } from '../domain/peg.ts';
import type { LatentModel, RandomTerm } from './engine/latent-model.ts';
import { factorRows, sparseRows } from './engine/sparse-rows.ts';
import { type FeatureShares, featureShares } from './feature-shares.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { Season } from './season.ts';
import type { ModelSession } from './sessions-in-model.ts';

/** Names of the model's terms, as the engine and the published standard deviations know them. */
export const TERM = {
  event: 'event',
  water: 'water',
  waterSeason: 'waterMonth',
  angler: 'angler',
  peg: 'peg',
  feature: 'feature',
  season: 'featureMonth',
  choice: 'choice',
} as const;

/** The name of the one fixed effect: the level of everything. */
export const LEVEL = 'level';

/** What anglers chose, as a term beside the others: one level a session. */
export interface ChoiceTerm {
  readonly columns: number;
  readonly levels: readonly number[];
}

/** The latent model of a venue's sessions, and what its columns stand for. */
export interface RatingModel {
  readonly latent: LatentModel;
  readonly season: Season;
  readonly shares: FeatureShares;
  readonly eventColumns: ReadonlyMap<string, number>;
  readonly waterColumns: ReadonlyMap<string, number>;
  readonly pegColumns: ReadonlyMap<PegKey, number>;
  /** Features in the model. One that stands on every peg of its waters is part of par there, and is not among them. */
  readonly featureColumns: ReadonlyMap<string, number>;
}

/**
 * The model: log weight = level + day + angler + peg + Σ over the peg's features (feature + feature in this month) +
 * scatter, each but the level normal about zero with its own standard deviation, a feature's months a cyclic walk that
 * sums to zero. An unknown angler has no term.
 *
 * A day is its water, the water's own season (a cyclic walk as well) and the event. Without the first two, whole summers
 * that fish well would pass for a return of what most pegs have: on simulated waters with an ordinary season the swing of
 * such features came out a third too wide. For the same reason a feature that stands on every peg of a water, and is part
 * of par there, gets no column for that water's sessions.
 */
export function ratingModel(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  season: Season,
  choice?: ChoiceTerm,
): RatingModel {
  const shares = featureShares(venue);
  const eventColumns = numbered(sessions.map(({ event }) => event.id));
  const waterColumns = numbered(venue.waters.map(({ id }) => id));
  const anglerColumns = numbered(sessions.flatMap(({ session }) => session.angler ?? []));
  const pegColumns = numbered(venue.pegs.map(({ water, peg }) => pegKey(water, peg)));
  const featureColumns = numbered(shares.features.filter((feature) => shares.contrastOf(feature) > 0));
  const features = venue.pegs.map(({ water, features: carried }) =>
    [...featureColumns].flatMap(([feature, column]) =>
      carried.includes(feature) && shares.shareOf(water, feature) < 1 ? [column] : [],
    ),
  );
  const waters = sessions.map(({ event }) => waterColumns.get(event.water)!);
  const positions = sessions.map(({ event }) => season.positionOf(event));
  const pegs = sessions.map(({ session }) => pegColumns.get(pegKey(session.water, session.peg))!);
  const factor = (name: string, columns: number, levels: readonly number[]): RandomTerm => ({
    name,
    columns,
    rows: factorRows(levels),
    prior: { kind: 'independent' },
  });
  const ones = (columns: readonly number[]) => columns.map((column) => ({ column, weight: 1 }));
  const terms: RandomTerm[] = [
    factor(
      TERM.event,
      eventColumns.size,
      sessions.map(({ event }) => eventColumns.get(event.id)!),
    ),
    // With one water, its level is the level of everything.
    factor(TERM.water, waterColumns.size > 1 ? waterColumns.size : 0, waterColumns.size > 1 ? waters : []),
    {
      ...factor(
        TERM.waterSeason,
        waterColumns.size * season.positions,
        positions.map((position, i) => (position === null ? -1 : waters[i]! * season.positions + position)),
      ),
      prior: season.prior,
    },
    factor(
      TERM.angler,
      anglerColumns.size,
      sessions.map(({ session }) => anglerColumns.get(session.angler ?? '') ?? -1),
    ),
    factor(TERM.peg, pegColumns.size, pegs),
    {
      name: TERM.feature,
      columns: featureColumns.size,
      rows: sparseRows(pegs.map((peg) => ones(features[peg]!))),
      prior: { kind: 'independent' },
    },
    {
      name: TERM.season,
      columns: featureColumns.size * season.positions,
      rows: sparseRows(
        pegs.map((peg, i) => {
          const position = positions[i]!;
          return position === null ? [] : ones(features[peg]!.map((column) => column * season.positions + position));
        }),
      ),
      prior: season.prior,
    },
    ...(choice === undefined ? [] : [factor(TERM.choice, choice.columns, choice.levels)]),
  ];
  return {
    latent: {
      observations: {
        lower: Float64Array.from(sessions, ({ isCensored, logKg }) => (isCensored ? -Infinity : logKg)),
        upper: Float64Array.from(sessions, ({ logKg }) => logKg),
      },
      fixed: [{ name: LEVEL, values: new Float64Array(sessions.length).fill(1) }],
      // A term without a column has nothing to estimate.
      terms: terms.filter(({ columns }) => columns > 0),
    },
    season,
    shares,
    eventColumns,
    waterColumns,
    pegColumns,
    featureColumns,
  };
}

function numbered(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(names)].map((name, i) => [name, i]));
}
