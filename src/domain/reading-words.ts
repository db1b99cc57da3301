import { type Day, daysBetween } from './day.ts';

/** How old a guide is on the day it is read, to stand behind its date: `, 4 days old`. Nothing on or before that date. */
export function ageWords(guideDay: Day, today: Day): string {
  const days = daysBetween(guideDay, today);
  if (days <= 0) return '';
  if (days < 61) return `, ${days === 1 ? '1 day' : `${days} days`} old`;
  const months = Math.floor(days / 30.44);
  return months < 24 ? `, ${months} months old` : `, ${Math.floor(months / 12)} years old`;
}

/** By how much a check is overdue (or an estimate passed), to stand behind the day it was due. Nothing up to and on that day. */
export function overdueWords(dueOn: Day, today: Day, past = 'check overdue'): string {
  const days = daysBetween(dueOn, today);
  if (days <= 0) return '';
  return `, ${past} by ${days === 1 ? '1 day' : `${days} days`}`;
}
