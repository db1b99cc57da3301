import type { EventChange } from '../../content/papers/results/plan-results.ts';
import type { Unread } from '../../content/papers/results/result-row.ts';
import { countWords } from '../../domain/count-words.ts';

const WORDS = { new: 'new', corrected: 'corrected', same: 'as in the log already' } as const;

/** What an import would do to the log, an event a line and each difference of a corrected one below it. */
export function changeLines(changes: readonly EventChange[]): readonly string[] {
  return changes.flatMap(({ event, kind, sessions, differences }) => [
    `${event}: ${WORDS[kind]}, ${countWords(sessions, 'session')}`,
    ...differences.map((line) => `    ${line}`),
  ]);
}

/** What of the papers goes nowhere. Nothing is dropped in silence. */
export function unreadLines(unread: readonly Unread[]): readonly string[] {
  if (unread.length === 0) return [];
  return [
    `Not taken, ${countWords(unread.length, 'thing')}:`,
    ...unread.map(({ place, what, why }) => `    ${place}: ${what}: ${why}`),
  ];
}
