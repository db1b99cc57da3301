import { expect, test } from 'vitest';
import { minutesOfDay, startOfDay, wallTime } from '../../src/ground/wall-time.ts';

const LONDON = 'Europe/London';

test('a summer instant reads an hour later in London than in UTC', () => {
  expect(wallTime(Date.parse('2026-06-15T04:43:00Z'), LONDON)).toBe('05:43');
  expect(wallTime(Date.parse('2026-12-15T04:43:00Z'), LONDON)).toBe('04:43');
  expect(wallTime(Date.parse('2026-06-15T00:00:00Z'), 'UTC')).toBe('00:00');
});

test('a day begins at midnight on the wall', () => {
  expect(new Date(startOfDay('2026-06-15', LONDON)).toISOString()).toBe('2026-06-14T23:00:00.000Z');
  expect(new Date(startOfDay('2026-06-15', 'Pacific/Auckland')).toISOString()).toBe('2026-06-14T12:00:00.000Z');
});

test('a day has 1440 minutes, an hour fewer when the clocks go forward and one more when they go back', () => {
  expect(minutesOfDay('2026-06-15', LONDON)).toHaveLength(1440);
  expect(minutesOfDay('2026-03-29', LONDON)).toHaveLength(1380);
  expect(minutesOfDay('2026-10-25', LONDON)).toHaveLength(1500);
});
