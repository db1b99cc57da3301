import { type Day, isDay, MONTH_NAMES } from '../../../domain/day.ts';
import { headingWords } from '../headings.ts';

const WORDED = /\b(\d{1,2})(?:st|nd|rd|th)?\s+(?:of\s+)?([a-z]{3,9})\.?,?\s+(\d{4}|\d{2})\b/i;
const WORDED_MONTH_FIRST = /\b([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})\b/i;
const NUMBERS = /\b(\d{1,2})[./-](\d{1,2})[./-](\d{4}|\d{2})\b/;
const ISO = /\b(\d{4}-\d{2}-\d{2})\b/;

/** A day written in a title: `2026-07-12`, `12th July 2026`, `12/07/26` (the day first, as the trade's papers write it). */
export function dayInTitle(text: string): Day | null {
  const iso = ISO.exec(text)?.[1];
  if (iso !== undefined && isDay(iso)) return iso;
  const worded = WORDED.exec(text);
  if (worded !== null) return dayOf(worded[3]!, monthNumber(worded[2]!), worded[1]!);
  const monthFirst = WORDED_MONTH_FIRST.exec(text);
  if (monthFirst !== null) return dayOf(monthFirst[3]!, monthNumber(monthFirst[1]!), monthFirst[2]!);
  const numbers = NUMBERS.exec(text);
  return numbers === null ? null : dayOf(numbers[3]!, Number(numbers[2]), numbers[1]!);
}

function monthNumber(word: string): number {
  return MONTH_NAMES.findIndex((name) => name.toLowerCase().startsWith(word.toLowerCase().slice(0, 3))) + 1;
}

function dayOf(year: string, month: number, day: string): Day | null {
  const written = `${year.length === 2 ? `20${year}` : year}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isDay(written) ? written : null;
}

/** A section named in a title: `Section B`, `B section`. */
export function sectionInTitle(text: string): string | null {
  const found = /\bsect(?:ion)?\.?\s*[:-]?\s*([a-z0-9]{1,2})\b|\b([a-z0-9]{1,2})\s+section\b/i.exec(text);
  return (found?.[1] ?? found?.[2])?.toUpperCase() ?? null;
}

/** The one water whose name or id stands in a title; null where none or several do. */
export function waterInTitle(
  text: string,
  waters: readonly { readonly id: string; readonly name: string }[],
): string | null {
  const words = ` ${headingWords(text)} `;
  const found = waters.filter(({ id, name }) =>
    [headingWords(name), headingWords(id)].some((known) => known !== '' && words.includes(` ${known} `)),
  );
  return found.length === 1 ? found[0]!.id : null;
}
