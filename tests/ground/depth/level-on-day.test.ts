import { expect, test } from 'vitest';
import { latestLevel, levelOnDay, levelReadings } from '../../../src/ground/depth/level-on-day.ts';

const readings = levelReadings(
  [
    { water: 'pit', day: '2026-03-20', levelMetres: 0.3 },
    { water: 'pit', day: '2026-03-01', levelMetres: 0.1 },
    { water: 'pit', day: '2026-03-10', waterDegreesC: 9 },
    { water: 'other', day: '2026-03-10', levelMetres: 2 },
    { water: 'pit', day: '2026-03-11', levelMetres: -0.2 },
  ],
  'pit',
);

test('the nearest reading of the water counts, whatever the order of the rows', () => {
  expect(levelOnDay(readings, '2026-03-05')?.metres).toBe(0.1);
  expect(levelOnDay(readings, '2026-03-08')?.metres).toBe(-0.2);
});

test('of two readings as near the earlier counts', () => {
  expect(levelOnDay(readings, '2026-03-06')?.day).toBe('2026-03-01');
});

test('a reading counts seven days before and after and no longer', () => {
  expect(levelOnDay(readings, '2026-02-22')?.metres).toBe(0.1);
  expect(levelOnDay(readings, '2026-02-21')).toBeNull();
  expect(levelOnDay(readings, '2026-03-27')?.metres).toBe(0.3);
  expect(levelOnDay(readings, '2026-03-28')).toBeNull();
  expect(levelOnDay([], '2026-03-05')).toBeNull();
});

test('the latest reading up to a day is told however old it is', () => {
  expect(latestLevel(readings, '2026-03-15')).toEqual({ metres: -0.2, day: '2026-03-11' });
  expect(latestLevel(readings, '2030-01-01')?.day).toBe('2026-03-20');
  expect(latestLevel(readings, '2026-02-28')).toBeNull();
});
