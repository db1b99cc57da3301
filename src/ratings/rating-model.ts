import { type PegKey, pegKey } from '../domain/peg.ts';
import type { LatentModel, RandomTerm, SparseRows } from './engine/latent-model.ts';
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

/** What the columns of the model's terms stand for. */
export interface RatingColumns {
  readonly shares: FeatureShares;
  readonly season: Season;
  readonly waterColumns: ReadonlyMap<string, number>;
  readonly pegColumns: ReadonlyMap<PegKey, number>;
  /** Features in the model. One that stands on every peg of its waters is part of par there, and is not among them. */
  readonly featureColumns: ReadonlyMap<string, number>;
}

/** The latent model of a venue's sessions, and what its columns stand for. */
export interface RatingModel extends RatingColumns {
  readonly latent: LatentModel;
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
  const columns: RatingColumns = {
    shares,
    season,
    waterColumns: numbered(venue.waters.map(({ id }) => id)),
    pegColumns: numbered(venue.pegs.map(({ water, peg }) => pegKey(water, peg))),
    featureColumns: numbered(shares.features.filter((feature) => shares.contrastOf(feature) > 0)),
  };
  const terms = [
    ...dayTerms(sessions, columns),
    ...pegTerms(venue, sessions, columns),
    ...(choice === undefined ? [] : [factor(TERM.choice, choice.columns, choice.levels)]),
  ];
  return {
    ...columns,
    latent: {
      observations: {
        lower: Float64Array.from(sessions, ({ isCensored, logKg }) => (isCensored ? -Infinity : logKg)),
        upper: Float64Array.from(sessions, ({ logKg }) => logKg),
      },
      fixed: [{ name: LEVEL, values: new Float64Array(sessions.length).fill(1) }],
      // A term without a column has nothing to estimate.
      terms: terms.filter((term) => term.columns > 0),
    },
  };
}

/** What everyone of an event shares, and what an angler takes along. */
function dayTerms(sessions: readonly ModelSession[], { waterColumns, season }: RatingColumns): RandomTerm[] {
  const events = numbered(sessions.map(({ event }) => event.id));
  const anglers = numbered(sessions.flatMap(({ session }) => session.angler ?? []));
  const waters = sessions.map(({ event }) => waterColumns.get(event.water)!);
  const months = sessions.map(({ event }, i) => {
    const position = season.positionOf(event);
    return position === null ? -1 : waters[i]! * season.positions + position;
  });
  const levelsOf = (columns: ReadonlyMap<string, number>, names: readonly (string | undefined)[]) =>
    names.map((name) => columns.get(name ?? '') ?? -1);
  return [
    factor(
      TERM.event,
      events.size,
      levelsOf(
        events,
        sessions.map(({ event }) => event.id),
      ),
    ),
    // With one water, its level is the level of everything.
    ...(waterColumns.size > 1 ? [factor(TERM.water, waterColumns.size, waters)] : []),
    { ...factor(TERM.waterSeason, waterColumns.size * season.positions, months), prior: season.prior },
    factor(
      TERM.angler,
      anglers.size,
      levelsOf(
        anglers,
        sessions.map(({ session }) => session.angler),
      ),
    ),
  ];
}

/** What a peg gives by itself, and by its features over the year and in season. */
function pegTerms(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  { pegColumns, featureColumns, shares, season }: RatingColumns,
): RandomTerm[] {
  const pegs = sessions.map(({ session }) => pegColumns.get(pegKey(session.water, session.peg))!);
  const carried = venue.pegs.map(({ water, features }) =>
    [...new Set(features)]
      .filter((feature) => featureColumns.has(feature) && shares.shareOf(water, feature) < 1)
      .map((feature) => featureColumns.get(feature)!),
  );
  const inSeason = sessions.map(({ event }, i) => {
    const position = season.positionOf(event);
    return position === null ? [] : carried[pegs[i]!]!.map((column) => column * season.positions + position);
  });
  return [
    factor(TERM.peg, pegColumns.size, pegs),
    {
      name: TERM.feature,
      columns: featureColumns.size,
      rows: onesAt(pegs.map((peg) => carried[peg]!)),
      prior: { kind: 'independent' },
    },
    {
      name: TERM.season,
      columns: featureColumns.size * season.positions,
      rows: onesAt(inSeason),
      prior: season.prior,
    },
  ];
}

function factor(name: string, columns: number, levels: readonly number[]): RandomTerm {
  return { name, columns, rows: factorRows(levels), prior: { kind: 'independent' } };
}

function onesAt(columns: readonly (readonly number[])[]): SparseRows {
  return sparseRows(columns.map((row) => row.map((column) => ({ column, weight: 1 }))));
}

function numbered(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(names)].map((name, i) => [name, i]));
}
