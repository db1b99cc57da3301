import { expect, it } from 'vitest';
import { gramsByHour, type HourWeight, hoursBegun } from '../../src/domain/hour-weight.ts';

const noted = (hour: number, part: string, weightGrams: number): HourWeight => ({
  event: 'a',
  peg: '7',
  hour,
  part,
  weightGrams,
});

it('adds up the parts of an hour, and takes the whole bag where an hour tells it', () => {
  const rows = [noted(1, 'total', 2000), noted(2, 'silvers', 1000), noted(2, 'carp', 500), noted(4, 'total', 100)];
  expect(gramsByHour(rows, 4)).toEqual([2000, 1500, 0, 100]);
});

it('counts an hour that is told both ways once', () => {
  expect(gramsByHour([noted(1, 'total', 2000), noted(1, 'carp', 1500)], 1)).toEqual([2000]);
});

it('counts the last half hour as begun', () => {
  expect([hoursBegun(4.5), hoursBegun(5)]).toEqual([5, 5]);
});
