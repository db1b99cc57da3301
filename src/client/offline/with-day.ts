import { type Day, formatDay } from '../../domain/day.ts';

/** What stands before the day of the guide wherever a file states it. Any other day may be the same by chance, and stays. */
const BEFORE =
  /(data-guide-day="|Data to (?:<time datetime=")?|Data of |closed on |"(?:asOf|guideDay)":"|,(?:open|closed|limited),)/
    .source;

/**
 * Turns the text of a file of one day of the guide into that of another day: most pages change by nothing else. Whether
 * the outcome is right is for the list's digest to say; where a file changed otherwise, it is not.
 */
export function withDay(text: string, from: Day, to: Day): string {
  return text
    .replaceAll(`datetime="${from}">${formatDay(from)}`, `datetime="${from}">${formatDay(to)}`)
    .replace(new RegExp(`${BEFORE}${from}`, 'g'), (_, before: string) => before + to)
    .replace(new RegExp(`${BEFORE}${formatDay(from)}`, 'g'), (_, before: string) => before + formatDay(to));
}
