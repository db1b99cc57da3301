import { type Day, daysBetween } from './day.ts';

/**
 * How old a guide is on the day it is read, to stand behind its date: `, 4 days old`. Nothing on or before that date.
 * @param ages one day, days, months and years in the page's language: `1 day old|# days old|# months old|# years old`
 */
export function ageWords(guideDay: Day, today: Day, ages: string): string {
  const days = daysBetween(guideDay, today);
  if (days <= 0) return '';
  const months = Math.floor(days / 30.44);
  const [form, count] =
    days === 1 ? [0, 1] : days < 61 ? [1, days] : months < 24 ? [2, months] : [3, Math.floor(months / 12)];
  return `, ${(ages.split('|')[form] ?? '').replace('#', String(count))}`;
}

/** By how much a check is overdue (or an estimate passed), to stand behind the day it was due. Nothing up to and on that day. */
export function overdueWords(dueOn: Day, today: Day, past = 'check overdue'): string {
  const days = daysBetween(dueOn, today);
  if (days <= 0) return '';
  return `, ${past} by ${days === 1 ? '1 day' : `${days} days`}`;
}
