import { MONTHS, type Month, monthOf, yearOf } from '../domain/day.ts';
import type { PegKey } from '../domain/peg.ts';
import type { SessionStatus } from '../domain/session.ts';
import type { WordKey } from '../words/languages.ts';
import { sayIn } from '../words/say.ts';
import type { Atlas } from './atlas.ts';

/** How often a peg was fished: counts alone, never what one angler caught. */
export interface SessionCounts {
  readonly total: number;
  /** Latest year first; twelve counts from January on. */
  readonly years: readonly { readonly year: number; readonly months: readonly number[]; readonly total: number }[];
  /** "31 weighed", "4 did not weigh", in the order of the words below; only what occurred. */
  readonly byStatus: readonly string[];
  /** Sessions on this peg by month, over all years. */
  readonly byMonth: Readonly<Record<Month, number>>;
}

const STATUS_WORDS: readonly (readonly [SessionStatus, WordKey])[] = [
  ['weighed', 'sessions.weighed'],
  ['blank', 'sessions.blank'],
  ['dnw', 'sessions.dnw'],
  ['unlisted', 'sessions.unlisted'],
  ['absent', 'sessions.absent'],
  ['disqualified', 'sessions.disqualified'],
];

/** Counts the sessions behind a peg by year, month and how they ended. */
export function sessionCounts(atlas: Atlas, key: PegKey): SessionCounts {
  const say = sayIn(atlas.venue.settings.language);
  const sessions = atlas.sessionsByPeg.get(key) ?? [];
  const days = sessions.flatMap(({ event }) => atlas.eventsById.get(event)?.day ?? []);
  const years = [...new Set(days.map(yearOf))].sort((a, b) => b - a);
  const inMonth = (month: Month, year?: number) =>
    days.filter((day) => monthOf(day) === month && (year === undefined || yearOf(day) === year)).length;
  return {
    total: sessions.length,
    years: years.map((year) => {
      const months = MONTHS.map((month) => inMonth(month, year));
      return { year, months, total: months.reduce((sum, count) => sum + count, 0) };
    }),
    byStatus: STATUS_WORDS.flatMap(([status, words]) => {
      const count = sessions.filter((session) => session.status === status).length;
      return count === 0 ? [] : [say(words, { count })];
    }),
    byMonth: Object.fromEntries(MONTHS.map((month) => [month, inMonth(month)])) as Record<Month, number>,
  };
}
