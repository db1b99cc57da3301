import type { League } from '../domain/league.ts';
import type { Match } from '../domain/match.ts';
import { pegKey } from '../domain/peg.ts';
import type { Session } from '../domain/session.ts';
import type { Venue } from '../domain/venue.ts';
import { matchResults } from '../match-day/match-results.ts';
import { type LeaguePoints, type Standing, standings } from '../match-day/standings.ts';
import type { WeighedIn, WeighedStatus } from '../match-day/weighed-in.ts';

/** The standings of a league, with the matches behind them. */
export interface LeagueTable {
  /** In the season's order; a match that is not in the log yet counts for nobody. */
  readonly fished: readonly string[];
  readonly toCome: readonly string[];
  readonly standings: readonly Standing[];
  /** Points of a match that was missed. */
  readonly missed: number;
  /** Bags without a reference, which count for nobody. */
  readonly unnamed: number;
}

/**
 * A season's standings by reference, from the log. Only where the club works: no page shows one angler's results.
 */
export function leagueTable(venue: Venue, league: League): LeagueTable {
  const matches = new Map((venue.matches ?? []).map((match) => [match.id, match]));
  const of = league.matches.flatMap((id) => matches.get(id) ?? []);
  const results = of.map((match) => ({ match, rows: rowsOf(venue, match) }));
  const fished = results.filter(({ rows }) => rows.length > 0);
  const points = fished.flatMap(({ match, rows }) => pointsOf(match, rows, league));
  const largest = Math.max(0, ...fished.map(({ rows }) => fieldOf(rows, league)));
  const count = league.counts === 'match-places' ? 'low' : (of[0]?.scoring.count ?? 'low');
  const missed = count === 'low' ? (league.missed ?? largest + 1) : 0;
  return {
    fished: fished.map(({ match }) => match.id),
    toCome: results.filter(({ rows }) => rows.length === 0).map(({ match }) => match.id),
    standings: standings(
      fished.map(({ match }) => match.id),
      points,
      {
        count,
        best: league.best === null ? null : Math.min(league.best, fished.length),
        missed,
      },
    ),
    missed,
    unnamed: fished.reduce((sum, { rows }) => sum + rows.filter(({ angler }) => angler === undefined).length, 0),
  };
}

interface Row extends WeighedIn {
  readonly angler: string | undefined;
}

function rowsOf(venue: Venue, match: Match): readonly Row[] {
  const ids = new Set(
    venue.events
      .filter(
        ({ day, water, kind, listing }) =>
          day === match.day && match.waters.includes(water) && kind === 'match' && listing === 'full',
      )
      .map(({ id }) => id),
  );
  const planned = new Map(match.plan.flatMap(({ name, pegs }) => pegs.map((peg) => [peg, name] as const)));
  return venue.sessions
    .filter(({ event, status }) => ids.has(event) && status !== 'unlisted')
    .map((session: Session) => ({
      angler: session.angler,
      section: session.section ?? planned.get(pegKey(session.water, session.peg)) ?? '',
      peg: pegKey(session.water, session.peg),
      status: session.status as WeighedStatus,
      grams: session.weightGrams ?? 0,
    }));
}

function pointsOf(match: Match, rows: readonly Row[], { counts }: League): readonly LeaguePoints[] {
  const anglers = new Map(rows.map(({ peg, angler }) => [peg, angler]));
  return matchResults(rows, { ...match.scoring, places: match.places }).flatMap((row) => {
    const angler = anglers.get(row.peg);
    const points = counts === 'section-points' ? row.points : row.overallPlace;
    // Who did not fish, or does not count, has no points of this match: it is one that was missed.
    const isThere = row.status !== 'absent' && row.status !== 'disqualified';
    return angler === undefined || points === null || !isThere
      ? []
      : [{ angler, match: match.id, points, grams: row.grams }];
  });
}

/** The most points somebody can have. */
function fieldOf(rows: readonly Row[], { counts }: League): number {
  if (counts === 'match-places') return rows.length;
  return Math.max(...[...Map.groupBy(rows, ({ section }) => section).values()].map(({ length }) => length));
}
