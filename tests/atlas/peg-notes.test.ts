import { expect, it } from 'vitest';
import { pegNotes } from '../../src/atlas/peg-notes.ts';
import { MONTHS } from '../../src/domain/day.ts';

const SUMMER = { heading: 'Summer', months: [6, 7, 8], markdown: 'Carp in the lilies.' } as const;
const WINTER = { heading: 'Winter', months: [12, 1, 2], markdown: 'Roach at 11 m.' } as const;

it('puts the note of the present month first and keeps the others in their order', () => {
  const { seasonal } = pegNotes([SUMMER, WINTER], 1);
  expect(seasonal.map(({ heading, isNow }) => [heading, isNow])).toEqual([
    ['Winter', true],
    ['Summer', false],
  ]);
  expect(seasonal[0]?.months).toBe('12 1 2');
});

it('keeps what holds all year, and headings that are no season, apart from the seasons', () => {
  const { always, seasonal } = pegNotes(
    [
      { heading: '', months: [], markdown: 'A snag on the left.' },
      { heading: 'All year', months: MONTHS, markdown: 'Plumb twice.' },
      { heading: 'The old stump', months: [], markdown: 'Still there.' },
      SUMMER,
    ],
    1,
  );
  expect(always.map(({ heading }) => heading)).toEqual(['', 'All year', 'The old stump']);
  expect(seasonal).toHaveLength(1);
});

it('leaves out a heading without a word below it', () => {
  expect(pegNotes([{ ...SUMMER, markdown: ' \n' }], 7).seasonal).toEqual([]);
});
