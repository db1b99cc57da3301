import { MONTH_NAMES, MONTHS, type Month } from './day.ts';

/**
 * Meteorological seasons of the northern hemisphere (WMO and Met Office practice, from memory): spring is March to May.
 */
export const SEASONS: readonly { readonly name: string; readonly months: readonly Month[] }[] = [
  { name: 'Spring', months: [3, 4, 5] },
  { name: 'Summer', months: [6, 7, 8] },
  { name: 'Autumn', months: [9, 10, 11] },
  { name: 'Winter', months: [12, 1, 2] },
];

const ALL_YEAR = /^(?:all year(?: round)?|all-year|year round)$/;

/**
 * The months a heading names, in the order it names them: a season (`Winter` is December to February), `All year`, a
 * month, a list (`May and June`) or a range that may pass New Year (`October to March`). Empty where it names none.
 */
export function monthsOfHeading(heading: string): readonly Month[] {
  const words = heading
    .trim()
    .toLowerCase()
    .replace(/[.,:;]+$/, '')
    .replace(/\s+/g, ' ');
  if (ALL_YEAR.test(words)) return MONTHS;
  const found: Month[] = [];
  for (const part of words.split(/\s*(?:,| and | & |\/)\s*/)) {
    const months = monthsOfPart(part);
    if (months.length === 0) return [];
    found.push(...months);
  }
  return [...new Set(found)];
}

function monthsOfPart(part: string): readonly Month[] {
  const season = SEASONS.find(({ name }) => name.toLowerCase() === part);
  if (season !== undefined) return season.months;
  const ends = part.replace(/^(?:from|in|late|early|mid) /, '').split(/\s*(?:–|—|-|\bto\b|\buntil\b|\bthrough\b)\s*/);
  const months = ends.map(monthNamed);
  const [first, last] = months;
  if (ends.length > 2 || first === undefined || first === null || last === null) return [];
  return last === undefined ? [first] : monthRange(first, last);
}

/** Months from one to another, both included, past New Year where the second comes first. */
export function monthRange(first: Month, last: Month): readonly Month[] {
  const length = ((last - first + 12) % 12) + 1;
  return Array.from({ length }, (_, index) => (((first - 1 + index) % 12) + 1) as Month);
}

/** A month by its English name or the first three letters or more of it (`Sept`); null for anything else. */
function monthNamed(word: string): Month | null {
  if (word.length < 3) return null;
  const index = MONTH_NAMES.findIndex((name) => name.toLowerCase().startsWith(word));
  return index === -1 ? null : (MONTHS[index] as Month);
}
