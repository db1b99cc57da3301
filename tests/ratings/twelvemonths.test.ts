import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import { twelvemonths } from '../../src/ratings/twelvemonths.ts';

test('three years are three twelvemonths, the last of them ending with the log', () => {
  const { count, positionOf } = twelvemonths(['2023-11-25', '2025-03-01', '2026-11-21']);
  expect(count).toBe(3);
  expect([positionOf('2023-11-25'), positionOf('2025-03-01'), positionOf('2026-11-21')]).toEqual([0, 1, 2]);
});

test('a log of some months, and none, is one twelvemonth', () => {
  expect(twelvemonths(['2026-01-01', '2026-06-01']).count).toBe(1);
  expect(twelvemonths([]).count).toBe(1);
});

test('every day has a place, days that follow never an earlier one', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9000 }), { minLength: 1, maxLength: 30 }), (offsets) => {
      const days = offsets.map((offset) => addDays('2001-05-05', offset)).sort();
      const { count, positionOf } = twelvemonths(days);
      const places = days.map(positionOf);
      places.forEach((place, i) => {
        expect(place).toBeGreaterThanOrEqual(i === 0 ? 0 : places[i - 1]!);
      });
      expect(places.at(-1)).toBe(count - 1);
    }),
  );
});
