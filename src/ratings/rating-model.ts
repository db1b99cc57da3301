import { addDays, type Day } from '../domain/day.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { groundOn } from '../domain/stand.ts';
import { fishingSteps } from '../domain/water-history.ts';
import type { LatentModel, LinearCombination, RandomTerm, SparseRows } from './engine/latent-model.ts';
import { factorRows, sparseRows } from './engine/sparse-rows.ts';
import { type FeatureShares, featureShares } from './feature-shares.ts';
import { onceForEach } from './once-for-each.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { ModelSession } from './sessions-in-model.ts';
import { standsInLog, tellingFeatures } from './stands-in-log.ts';
import type { Season } from './temperature-season.ts';
import { type Twelvemonths, twelvemonths } from './twelvemonths.ts';

/** Names of the model's terms, as the engine and the published standard deviations know them. */
export const TERM = {
  event: 'event',
  water: 'water',
  waterSeason: 'waterMonth',
  venueWave: 'venueWave',
  angler: 'angler',
  peg: 'peg',
  feature: 'feature',
  season: 'featureMonth',
  wave: 'featureWave',
  pegYear: 'pegYear',
  waterYear: 'waterYear',
  stocking: 'stocking',
} as const;

/** The name of the one fixed effect: the level of everything. */
export const LEVEL = 'level';

/** Terms that a log must ask for before they are in the model. */
export interface AskedTerms {
  /** Pegs lie apart from themselves in other years. */
  readonly pegYears?: boolean;
  /** A water's own level walks from year to year. */
  readonly waterYears?: boolean;
}

/** What the columns of the model's terms stand for. */
export interface RatingColumns {
  readonly shares: FeatureShares;
  readonly season: Season;
  readonly waterColumns: ReadonlyMap<string, number>;
  readonly pegColumns: ReadonlyMap<PegKey, number>;
  /** Features in the model. One that stands on every peg of its waters is part of par there, and is not among them. */
  readonly featureColumns: ReadonlyMap<string, number>;
  readonly years: Twelvemonths;
  readonly asked: AskedTerms;
  /** Stockings and nettings of the waters within the log: their columns. */
  readonly stockings: readonly Stocking[];
}

/** A day from which a water's level may stand elsewhere: fish were put in or taken out. */
export interface Stocking {
  readonly water: string;
  readonly on: Day;
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
 * that fish well would pass for a worth of what most pegs have: on simulated waters with an ordinary season the swing of
 * such features came out a third too wide. For the same reason a feature that stands on every peg of a water, and is part
 * of par there, gets no column for that water's sessions. The waters' seasons have one wave in common: each walking by itself,
 * par of a month was told with half as much doubt again as there was, and the chance of none lay too near to even.
 *
 * A feature's year is a walk and one wave (its cosine and sine): most years are smooth, and a walk alone told their peaks a tenth
 * short. A water's level may step at a stocking; it walks over the years, and pegs lie apart from year to year, where the log
 * asks for that.
 */
export function ratingModel(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  season: Season,
  asked: AskedTerms = {},
): RatingModel {
  const days = sessions.map(({ event }) => event.day);
  const shares = featureShares(venue);
  const pegs = pegsOfDays(venue, sessions);
  const columns: RatingColumns = {
    shares,
    season,
    waterColumns: numbered(venue.waters.map(({ id }) => id)),
    pegColumns: numbered(groundsOf(venue)),
    featureColumns: numbered(featuresInModel(venue, shares, pegs)),
    years: twelvemonths(days),
    asked,
    stockings: stockingsOf(venue, sessions),
  };
  const terms = [...dayTerms(sessions, columns), ...yearTerms(sessions, columns), ...pegTerms(pegs, sessions, columns)];
  return {
    ...columns,
    latent: {
      observations: {
        lower: Float64Array.from(sessions, ({ isCensored, logKg }) => (isCensored ? -Infinity : logKg)),
        upper: Float64Array.from(sessions, ({ logKg }) => logKg),
        ...(sessions.some(({ blur }) => blur !== undefined)
          ? { blur: Float64Array.from(sessions, ({ blur }) => blur ?? 0) }
          : {}),
      },
      fixed: [{ name: LEVEL, values: new Float64Array(sessions.length).fill(1) }],
      // A term without a column has nothing to estimate.
      terms: terms.filter((term) => term.columns > 0),
    },
  };
}

/** The columns of the anglers known by a reference. */
export function anglerColumns(sessions: readonly ModelSession[]): ReadonlyMap<string, number> {
  return numbered(sessions.flatMap(({ session }) => session.angler ?? []));
}

/** What everyone of an event shares, and what an angler takes along. */
function dayTerms(sessions: readonly ModelSession[], { waterColumns, season }: RatingColumns): RandomTerm[] {
  const events = numbered(sessions.map(({ event }) => event.id));
  const anglers = anglerColumns(sessions);
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
    ...venueWave(sessions, season),
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

/** What the venue's wave adds at a position of the season; nothing where that is no circle. */
export function venueWaveAt({ venueWaves }: Season, position: number): LinearCombination['effects'] {
  return (venueWaves?.[position] ?? []).map((weight, column) => ({ term: TERM.venueWave, column, weight }));
}

/** The year that all waters of a venue share, as one wave: they lie under one sky. None where the season is no circle. */
function venueWave(sessions: readonly ModelSession[], season: Season): RandomTerm[] {
  if (season.venueWaves === null) return [];
  const waveAt = onceForEach((position: number | null) => (position === null ? [] : venueWaveAt(season, position)));
  const rows = sparseRows(sessions.map(({ event }) => waveAt(season.positionOf(event))));
  return [{ name: TERM.venueWave, columns: 2, rows, prior: { kind: 'independent' } }];
}

/** How the waters' own levels changed: a walk over the years, and a step at each stocking. */
function yearTerms(
  sessions: readonly ModelSession[],
  { waterColumns, years, asked, stockings }: RatingColumns,
): RandomTerm[] {
  const terms: RandomTerm[] = [];
  if (asked.waterYears === true && years.count > 1) {
    const levels = sessions.map(
      ({ event }) => waterColumns.get(event.water)! * years.count + years.positionOf(event.day),
    );
    terms.push({
      ...factor(TERM.waterYear, waterColumns.size * years.count, levels),
      prior: { kind: 'walk', positions: years.count },
    });
  }
  if (stockings.length > 0) {
    const stockingsBefore = onceForEach((event: ModelSession['event']) =>
      stockings.flatMap(({ water, on }, column) => (water === event.water && event.day >= on ? [column] : [])),
    );
    const after = sessions.map(({ event }) => stockingsBefore(event));
    terms.push({
      name: TERM.stocking,
      columns: stockings.length,
      rows: onesAt(after),
      prior: { kind: 'independent' },
    });
  }
  return terms;
}

/** Stockings and nettings with sessions of their water before and after them; of any other nothing can be told. */
function stockingsOf(venue: RatedVenue, sessions: readonly ModelSession[]): Stocking[] {
  return venue.waters.flatMap((water) => {
    const days = sessions.filter(({ event }) => event.water === water.id).map(({ event }) => event.day);
    return fishingSteps(water)
      .filter((on) => days.some((day) => day < on) && days.some((day) => day >= on))
      .map((on) => ({ water: water.id, on }));
  });
}

/** What a session's peg was that day. */
interface PegOfDay {
  readonly ground: PegKey;
  /** Those that tell it from the others: one list for all sessions with the same. */
  readonly features: readonly string[];
}

/** Of every session that was asked for: a back-test asks for the same ones month after month. */
const pegsOfVenue = new WeakMap<RatedVenue, WeakMap<ModelSession, PegOfDay>>();

function pegsOfDays(venue: RatedVenue, sessions: readonly ModelSession[]): PegOfDay[] {
  const stands = standsInLog(venue);
  const telling = tellingFeatures(venue);
  const known = pegsOfVenue.get(venue) ?? new WeakMap<ModelSession, PegOfDay>();
  pegsOfVenue.set(venue, known);
  const lists = new Map<string, readonly string[]>();
  const shared = (features: readonly string[]) => {
    const name = features.join('\n');
    const before = lists.get(name) ?? features;
    lists.set(name, before);
    return before;
  };
  return sessions.map((each) => {
    const { session, event } = each;
    const before = known.get(each);
    if (before !== undefined) return before;
    const stand = stands.get(pegKey(session.water, session.peg))!;
    const peg = { ground: groundOn(stand, event.day), features: shared(telling(stand, event.day)) };
    known.set(each, peg);
    return peg;
  });
}

/** All that was ever fished into: the pegs of the guide, retired stands, and what lay before each move to new ground. */
function groundsOf(venue: RatedVenue): PegKey[] {
  const stands = standsInLog(venue);
  const before = [...stands.values()].flatMap((stand) =>
    (stand.moved ?? []).map(({ on }) => groundOn(stand, addDays(on, -1))),
  );
  return [...stands.keys(), ...before];
}

/** Features that tell pegs apart today, and those that did on some day of the log: without a column their worth would fall on the pegs. */
function featuresInModel({ settings }: RatedVenue, shares: FeatureShares, pegs: readonly PegOfDay[]): string[] {
  const today = shares.features.filter((feature) => shares.contrastOf(feature) > 0);
  const inLog = new Set([...new Set(pegs.map(({ features }) => features))].flat());
  return [...today, ...settings.features.map(({ id }) => id).filter((id) => inLog.has(id))];
}

/**
 * What a peg gives by itself, and by its features over the year and in season. A feature works on the days it was there, and
 * a peg that was moved to new ground was another peg before.
 */
function pegTerms(
  pegsOfDay: readonly PegOfDay[],
  sessions: readonly ModelSession[],
  { pegColumns, featureColumns, season, years, asked }: RatingColumns,
): RandomTerm[] {
  const pegs = pegsOfDay.map(({ ground }) => pegColumns.get(ground)!);
  const columnsOf = onceForEach((features: readonly string[]) =>
    features.flatMap((feature) => featureColumns.get(feature) ?? []),
  );
  const carried = pegsOfDay.map(({ features }) => columnsOf(features));
  const { waves, positions } = season;
  const columnsAt = onceForEach((columns: readonly number[]) =>
    onceForEach((position: number) => columns.map((column) => column * positions + position)),
  );
  const wavesAt = onceForEach((columns: readonly number[]) =>
    onceForEach((position: number) =>
      columns.flatMap((column) => (waves?.[position] ?? []).map((weight, k) => ({ column: 2 * column + k, weight }))),
    ),
  );
  const inSeason = <Row>(rowAt: (columns: readonly number[]) => (position: number) => readonly Row[]) =>
    sessions.map(({ event }, i) => {
      const position = season.positionOf(event);
      return position === null ? [] : rowAt(carried[i]!)(position);
    });
  return [
    factor(TERM.peg, pegColumns.size, pegs),
    ...(asked.pegYears === true && years.count > 1
      ? [
          factor(
            TERM.pegYear,
            pegColumns.size * years.count,
            pegs.map((peg, i) => peg * years.count + years.positionOf(sessions[i]!.event.day)),
          ),
        ]
      : []),
    {
      name: TERM.feature,
      columns: featureColumns.size,
      rows: onesAt(carried),
      prior: { kind: 'independent' },
    },
    {
      name: TERM.season,
      columns: featureColumns.size * season.positions,
      rows: onesAt(inSeason(columnsAt)),
      prior: season.prior,
    },
    ...(waves === null
      ? []
      : [
          {
            name: TERM.wave,
            columns: featureColumns.size * 2,
            rows: sparseRows(inSeason(wavesAt)),
            prior: { kind: 'independent' } as const,
          },
        ]),
  ];
}

function factor(name: string, columns: number, levels: readonly number[]): RandomTerm {
  return { name, columns, rows: factorRows(levels), prior: { kind: 'independent' } };
}

function onesAt(columns: readonly (readonly number[])[]): SparseRows {
  const rowStart = new Int32Array(columns.length + 1);
  columns.forEach((row, i) => {
    rowStart[i + 1] = rowStart[i]! + row.length;
  });
  const column = new Int32Array(rowStart[columns.length]!);
  let next = 0;
  for (const row of columns) for (const own of row) column[next++] = own;
  return { rowStart, column, weight: new Float64Array(column.length).fill(1) };
}

function numbered(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(names)].map((name, i) => [name, i]));
}
