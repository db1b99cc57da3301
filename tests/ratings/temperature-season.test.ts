import { describe, expect, test } from 'vitest';
import { MONTH_SEASON, temperatureSeason } from '../../src/ratings/temperature-season.ts';
import { exampleEvent } from './example-log.ts';

const at = (waterDegreesC?: number) =>
  exampleEvent('a', { conditions: waterDegreesC === undefined ? {} : { waterDegreesC } });

test('the months close into a year', () => {
  expect(MONTH_SEASON.positionOf(exampleEvent('a', { day: '2026-01-31' }))).toBe(0);
  expect(MONTH_SEASON.positionOf(exampleEvent('a', { day: '2026-12-01' }))).toBe(11);
  expect(MONTH_SEASON.prior.kind).toBe('cyclic-walk');
});

describe('temperatureSeason', () => {
  test('has bands of two degrees from the coldest logged to the warmest, and two ends', () => {
    const season = temperatureSeason([at(3.9), at(), at(11)])!;
    expect(season.bandsFrom).toEqual([2, 4, 6, 8, 10]);
    expect(season.prior).toEqual({ kind: 'walk', positions: 5 });
    expect([2, 3.99, 4, 11.9].map((degrees) => season.positionOf(at(degrees)))).toEqual([0, 0, 1, 4]);
  });

  test('takes a day beyond what was seen at the nearest band, and knows nothing of a day without a reading', () => {
    const season = temperatureSeason([at(4), at(11)])!;
    expect([-1, 30].map((degrees) => season.positionOf(at(degrees)))).toEqual([0, 3]);
    expect(season.positionOf(at())).toBeNull();
  });

  test('holds frost apart from thaw', () => {
    expect(temperatureSeason([at(-0.5), at(0.5)])!.bandsFrom).toEqual([-2, 0]);
  });

  test('is none where no event logs the temperature or all lie in one band', () => {
    expect(temperatureSeason([at()])).toBeNull();
    expect(temperatureSeason([at(4.1), at(5.9)])).toBeNull();
  });
});
