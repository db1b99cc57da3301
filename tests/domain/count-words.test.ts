import { expect, it } from 'vitest';
import { countWords } from '../../src/domain/count-words.ts';

it('countWords gives the noun an s for every count but one', () => {
  expect(countWords(1, 'peg')).toBe('1 peg');
  expect(countWords(0, 'step')).toBe('0 steps');
  expect(countWords(3512, 'session')).toBe('3,512 sessions');
});

it('countWords takes the plural of a noun that has its own', () => {
  expect([0, 1, 2].map((count) => countWords(count, 'match', 'matches'))).toEqual([
    '0 matches',
    '1 match',
    '2 matches',
  ]);
});
