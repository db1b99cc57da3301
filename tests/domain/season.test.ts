import { expect, test } from 'vitest';
import { monthRange, monthsOfHeading } from '../../src/domain/season.ts';

test.each([
  ['Spring', [3, 4, 5]],
  ['winter', [12, 1, 2]],
  ['All year', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]],
  ['All year round', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]],
  ['April to June', [4, 5, 6]],
  ['April–June', [4, 5, 6]],
  ['Apr - Jun', [4, 5, 6]],
  ['October to March', [10, 11, 12, 1, 2, 3]],
  ['November', [11]],
  ['Sept', [9]],
  ['May and June', [5, 6]],
  ['Spring and autumn', [3, 4, 5, 9, 10, 11]],
  ['March to August', [3, 4, 5, 6, 7, 8]],
])('reads %s', (heading, months) => {
  expect(monthsOfHeading(heading)).toEqual(months);
});

test.each(['', 'Access', 'Ju', 'April to', 'Match days', 'Spring to', 'March to May to June'])(
  'finds no months in "%s"',
  (heading) => {
    expect(monthsOfHeading(heading)).toEqual([]);
  },
);

test('counts a range of one month, and one past New Year', () => {
  expect(monthRange(5, 5)).toEqual([5]);
  expect(monthRange(12, 1)).toEqual([12, 1]);
});
