import { type Day, formatDay } from '../../domain/day.ts';

/**
 * Turns the text of a file of one day of the guide into that of another day: most pages change by nothing else. Whether
 * the outcome is right is for the list's digest to say; where a file changed otherwise, it is not.
 */
export function withDay(text: string, from: Day, to: Day): string {
  return text.replaceAll(from, to).replaceAll(formatDay(from), formatDay(to));
}
