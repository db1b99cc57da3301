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
  readonly pegColumns: ReadonlyMap<PegKey, number>;
  /** Features in the model. One that stands on every peg of its waters is part of par there, and is not among them. */
  readonly featureColumns: ReadonlyMap<string, number>;
}

/**
 * The model: log weight = level + event + angler + peg + Σ over the peg's features (feature + feature in this month) +
 * scatter, each but the level normal about zero with its own standard deviation, a feature's months a cyclic walk that
 * sums to zero. An unknown angler has no term. On a water where every peg has a feature, the feature is part of par: it
 * shifts whole events there, which the event's own term carries, so it gets no column for that water's sessions;
 * otherwise the seasons of the water itself would pass for the feature's.
 */
export function ratingModel(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  season: Season,
  choice?: ChoiceTerm,
): RatingModel {
  const shares = featureShares(venue);
  const eventColumns = numbered(sessions.map(({ event }) => event.id));
  const anglerColumns = numbered(sessions.flatMap(({ session }) => session.angler ?? []));
  const pegColumns = numbered(venue.pegs.map(({ water, peg }) => pegKey(water, peg)));
  const featureColumns = numbered(shares.features.filter((feature) => shares.contrastOf(feature) > 0));
  const features = venue.pegs.map(({ water, features: carried }) =>
    [...featureColumns].flatMap(([feature, column]) =>
      carried.includes(feature) && shares.shareOf(water, feature) < 1 ? [column] : [],
    ),
  );
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
          const position = season.positionOf(sessions[i]!.event);
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
    pegColumns,
    featureColumns,
  };
}

function numbered(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(names)].map((name, i) => [name, i]));
}
