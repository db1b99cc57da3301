import { addDays, type Day, type Month, monthName, monthOf } from './day.ts';

/** The nearest days on either side of a day that lie outside the club's nesting months. */
export interface NestingWait {
  readonly before: Day;
  readonly from: Day;
}

/**
 * Where a day lies in the nesting months: the last day before them and the first after. Null outside them, and where the
 * club names all twelve. The law protects a nest in any month; these months are the club's caution.
 */
export function nestingWait(day: Day, months: readonly Month[]): NestingWait | null {
  if (!months.includes(monthOf(day)) || new Set(months).size >= 12) return null;
  return { before: walked(day, -1, months), from: walked(day, 1, months) };
}

function walked(day: Day, step: -1 | 1, months: readonly Month[]): Day {
  let at = day;
  while (months.includes(monthOf(at))) at = addDays(at, step);
  return at;
}

/** Months as words: `March to August` where they follow each other (over the new year too), else a list; `no month`. */
export function monthSpan(months: readonly Month[]): string {
  const [first, last] = [months[0], months.at(-1)];
  if (first === undefined || last === undefined) return 'no month';
  const isRun = months.every((month, index) => month === ((first - 1 + index) % 12) + 1);
  return isRun && months.length > 2 ? `${monthName(first)} to ${monthName(last)}` : months.map(monthName).join(', ');
}
