import type { Say } from './say.ts';

/** The twelve names stand in one message, so that no translator forgets a month. */
const nth = (list: string, index: number): string => list.split('|')[index] ?? '';

/** The name of a month, 1 for January. */
export function monthWords(month: number, say: Say): string {
  return nth(say('day.months'), month - 1);
}

/** A day `YYYY-MM-DD` as a person writes it: `12 Nov 2026`. */
export function dayWords(day: string, say: Say): string {
  return `${Number(day.slice(8, 10))} ${nth(say('day.monthsShort'), Number(day.slice(5, 7)) - 1)} ${day.slice(0, 4)}`;
}
