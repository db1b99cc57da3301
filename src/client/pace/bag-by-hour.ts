import type { DrawData } from '../../atlas/draw-page.ts';
import { expectedWeight } from '../../atlas/expected-weight.ts';
import type { Month } from '../../domain/day.ts';
import { shareBy } from '../../match-day/pace.ts';
import { monthWords } from '../../words/day-words.ts';
import { make } from '../make.ts';
import { say } from '../page-words.ts';
import type { Outing } from './outing.ts';
import { durationWords, spreadWords } from './pace-words.ts';

/** One column of a table by the hour: its head, and a bag at the end of the match. */
type Column = readonly [name: string, grams: number];

/**
 * The bag by the hours of the match: poor, typical and good day, and below them each part on a typical day. Two tables, since one of
 * all columns is wider than a phone, and its last part would be the one nobody sees.
 */
export function bagByHour(data: DrawData, outing: Outing, month: Month): HTMLElement {
  const bags = data.pegs[outing.peg]?.bags[month];
  if (bags === undefined) return make('p', {}, say('pace.noBag', { month: monthWords(month, say) }));
  const [[poor, typical, good], ...parts] = bags as [(typeof bags)[number], ...typeof bags];
  const known = data.hours[month];
  const hours = Array.from({ length: Math.ceil(outing.hours) }, (_, i) => Math.min(i + 1, outing.hours));
  const at = (grams: number, hour: number) =>
    expectedWeight((grams * shareBy(hour * 60, outing.hours * 60, known)) / 1000, data.weightUnit);
  const table = (caption: string, columns: readonly Column[]) =>
    make(
      'table',
      { className: 'bag-by-hour' },
      make('caption', {}, caption),
      make(
        'thead',
        {},
        make(
          'tr',
          {},
          ...[say('pace.after'), ...columns.map(([name]) => name)].map((name) => make('th', { scope: 'col' }, name)),
        ),
      ),
      make(
        'tbody',
        {},
        ...hours.map((hour) =>
          make(
            'tr',
            {},
            make('th', { scope: 'row' }, durationWords(hour * 60).replace(' 00 min', '')),
            ...columns.map(([, grams]) => make('td', {}, at(grams, hour))),
          ),
        ),
      ),
    );
  const whole = table(say('pace.wholeBag'), [
    [say('answer.poorDay'), poor],
    [say('answer.typical'), typical],
    [say('answer.goodDay'), good],
  ]);
  const ofParts = parts.map(([, middle], i): Column => [data.parts[i]?.name ?? '', middle]);
  return make(
    'div',
    {},
    make('p', {}, say('pace.bagIn', { month: monthWords(month, say), spread: spreadWords(known, outing.hours, say) })),
    make(
      'section',
      { className: 'wide bags-by-hour', ariaLabel: say('pace.bagByHour'), tabIndex: 0 },
      whole,
      ...(ofParts.length === 0 ? [] : [table(say('pace.partsOfTypical'), ofParts)]),
    ),
    make('p', { className: 'soft' }, say('pace.columnsAlone')),
  );
}
