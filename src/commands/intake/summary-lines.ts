import type { IntakePlan } from '../../content/intake/plan-intake.ts';
import { countWords } from '../../domain/count-words.ts';
import { formatDay } from '../../domain/day.ts';
import { visibleLine } from '../../domain/hidden-characters.ts';

/** What an intake would do, as lines: the rounds, then each peg or file with every change of it. */
export function summaryLines({ taken, changes }: IntakePlan): string[] {
  const rounds = taken.map(({ ref, day, venue, pegs, photos }) => {
    const counts = [countWords(pegs.length, 'peg'), ...(photos.length > 0 ? [countWords(photos.length, 'photo')] : [])];
    return `Round ${ref} of ${formatDay(day)}, ${oneLine(venue.name)}: ${counts.join(', ')}`;
  });
  const byPlace = Map.groupBy(changes, ({ where }) => where);
  const lines = [...byPlace].flatMap(([where, own]) => [
    `  ${oneLine(where)}`,
    ...own.map(
      ({ field, from, to }) => `    ${oneLine(field)}: ${from === null ? '' : `${oneLine(from)} → `}${oneLine(to)}`,
    ),
  ]);
  return [...rounds, ...lines];
}

/** A note from elsewhere stands on one line, whatever it holds. */
function oneLine(text: string): string {
  return visibleLine(text.replace(/\s+/g, ' '));
}
