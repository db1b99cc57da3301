import { countWords } from '../domain/count-words.ts';
import type { Match } from '../domain/match.ts';
import { pegKey } from '../domain/peg.ts';
import type { Session } from '../domain/session.ts';
import { formatWeight } from '../domain/weight.ts';
import { matchResults, WON_WORDS } from '../match-day/match-results.ts';
import { STATUS_WORDS, type WeighedIn, type WeighedStatus } from '../match-day/weighed-in.ts';
import type { Atlas } from './atlas.ts';
import { type MatchPeg, matchPeg } from './match-page.ts';

/** A line of published results: a peg and its weight, and nothing of who sat on it. */
export interface MatchResultLine {
  readonly place: string;
  readonly peg: MatchPeg;
  readonly weight: string;
  /** "A 2": the section and the place in it. */
  readonly section: string;
  readonly points: string;
  readonly won: string;
}

export interface MatchResultsView {
  readonly words: string;
  readonly rows: readonly MatchResultLine[];
}

/**
 * The results of a match that is in the log, by its own rules; null before. Only the pegs that stand in the guide are named, and
 * a match of which the log holds the frame alone has no section points to tell.
 */
export function matchResultsView(atlas: Atlas, match: Match): MatchResultsView | null {
  const { events, settings } = atlas.venue;
  const own = events.filter(
    ({ day, water, kind, listing }) =>
      day === match.day && match.waters.includes(water) && kind === 'match' && listing === 'full',
  );
  const ids = new Set(own.map(({ id }) => id));
  const sectionOf = new Map(match.plan.flatMap(({ name, pegs }) => pegs.map((peg) => [peg, name] as const)));
  const weighed = [...atlas.sessionsByPeg].flatMap(([key, sessions]) =>
    sessions
      .filter(({ event }) => ids.has(event) && atlas.pegsByKey.has(key))
      .flatMap((session) => weighedOf(session, sectionOf.get(key) ?? '')),
  );
  if (weighed.length === 0) return null;
  const results = matchResults(weighed, { ...match.scoring, places: match.places });
  const caught = weighed.filter(({ grams }) => grams > 0);
  const total = formatWeight(
    caught.reduce((sum, { grams }) => sum + grams, 0),
    settings.units,
  );
  return {
    words: `${countWords(weighed.length, 'peg')} in the log, ${countWords(caught.length, 'bag')} weighed, ${total} in all.`,
    rows: results.map((row) => ({
      place: row.overallPlace === null ? '' : String(row.overallPlace),
      peg: matchPeg(atlas, row.peg, row.section, false),
      weight: row.status === 'weighed' ? formatWeight(row.grams, settings.units) : STATUS_WORDS[row.status].name,
      section: [row.section, row.sectionPlace ?? ''].join(' ').trim(),
      points: String(row.points),
      won: row.won === null ? '' : WON_WORDS[row.won],
    })),
  };
}

function weighedOf({ water, peg, section, status, weightGrams }: Session, planned: string): WeighedIn[] {
  if (status === 'unlisted') return [];
  return [
    { section: section ?? planned, peg: pegKey(water, peg), status: status as WeighedStatus, grams: weightGrams ?? 0 },
  ];
}
