import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, formatDay, isDay, monthOf } from '../../src/domain/day.ts';

describe('a day', () => {
  it('exists only if the calendar has it', () => {
    expect(isDay('2024-02-29')).toBe(true);
    expect(isDay('2025-02-29')).toBe(false);
    expect(isDay('2026-13-01')).toBe(false);
    expect(isDay('2026-1-01')).toBe(false);
    expect(isDay('2026-04-31')).toBe(false);
    expect(isDay('')).toBe(false);
  });

  it('counts across a leap day and across the change of clocks', () => {
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2026-10-26', '2026-10-24')).toBe(-2);
  });

  it('is written as people write it', () => {
    expect(formatDay('2026-11-02')).toBe('2 Nov 2026');
    expect(monthOf('2026-11-02')).toBe(11);
  });

  it('comes back when days are added and counted', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (days) => {
        const day = addDays('2026-11-21', days);
        expect(daysBetween('2026-11-21', day)).toBe(days);
      }),
    );
  });
});
