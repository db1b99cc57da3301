import { type Day, type Month, monthOf } from '../../domain/day.ts';
import type { BankHistory } from './cut-spells.ts';

/**
 * The days on which somebody looked at each peg's bank and might have cut it, in order: none of the nesting months, when
 * nobody cuts, but for the days it was cut all the same. A peg with no look but its cuts is taken to be looked at whenever
 * another peg was. Null where the venue has cuts alone: then nothing is known of its walks.
 */
export function lookDays(
  histories: readonly BankHistory[],
  today: Day,
  nestingMonths: readonly Month[],
): ((history: BankHistory) => readonly Day[]) | null {
  const isUncutLook = ({ visits }: BankHistory) => visits.some(({ day, cut }) => !cut && day <= today);
  if (!histories.some(isUncutLook)) return null;
  const allowed = (visits: BankHistory['visits']): readonly Day[] => {
    const days = visits.filter(({ day, cut }) => day <= today && (cut || !nestingMonths.includes(monthOf(day))));
    return [...new Set(days.map(({ day }) => day))].sort();
  };
  const ofVenue = allowed(histories.flatMap(({ visits }) => visits));
  return (history) => (isUncutLook(history) ? allowed(history.visits) : ofVenue);
}
