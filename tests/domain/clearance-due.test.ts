import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecastCuts, growthHalf } from '../../src/domain/clearance-due.ts';
import { addDays, daysBetween } from '../../src/domain/day.ts';

const every = (peg: string, days: number, times: number, first = '2026-04-01') => ({
  peg,
  cuts: Array.from({ length: times }, (_, index) => addDays(first, days * index)),
});

describe('the next cut', () => {
  it('falls near the usual interval of a peg cut many times', () => {
    const forecasts = forecastCuts([every('a', 20, 8), every('b', 60, 3), every('c', 40, 4)]);
    const a = forecasts.find((forecast) => forecast.peg === 'a');
    expect(a?.ownIntervals).toBe(7);
    expect(daysBetween(a?.lastCut as string, a?.dueOn as string)).toBeGreaterThan(18);
    expect(daysBetween(a?.lastCut as string, a?.dueOn as string)).toBeLessThan(30);
  });

  it('takes the usual of the venue for a peg cut once, with a wider spread', () => {
    const forecasts = forecastCuts([every('a', 20, 8), every('b', 40, 5), every('once', 0, 1)]);
    const width = (peg: string) => {
      const forecast = forecasts.find((one) => one.peg === peg);
      return (
        daysBetween(forecast?.earliest as string, forecast?.latest as string) /
        daysBetween(forecast?.lastCut as string, forecast?.dueOn as string)
      );
    };
    expect(forecasts.find((one) => one.peg === 'once')?.ownIntervals).toBe(0);
    expect(width('once')).toBeGreaterThan(width('a'));
  });

  it('is not guessed where the venue has no interval of that half-year', () => {
    expect(forecastCuts([every('a', 0, 1)])).toEqual([]);
    expect(forecastCuts([])).toEqual([]);
  });

  it('knows the growing half-year from the resting one', () => {
    expect(growthHalf('2026-04-01')).toBe('growing');
    expect(growthHalf('2026-09-30')).toBe('growing');
    expect(growthHalf('2026-10-01')).toBe('resting');
    expect(growthHalf('2026-03-31')).toBe('resting');
  });

  // Efron and Morris, JASA 70, 1975: a shrunken mean lies between the group's own mean and the mean of all.
  it('lies between the peg’s own usual and the venue’s, and inside its own spread', () => {
    const pegs = fc.array(fc.tuple(fc.integer({ min: 5, max: 30 }), fc.integer({ min: 2, max: 5 })), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(pegs, (sizes) => {
        const histories = sizes.map(([days, cuts], index) => every(String(index), days, cuts));
        const logs = sizes.flatMap(([days, cuts]) => Array.from({ length: cuts - 1 }, () => Math.log(days)));
        const venue = Math.exp(logs.reduce((total, value) => total + value, 0) / logs.length);
        forecastCuts(histories).forEach((forecast, index) => {
          const own = sizes[index]?.[0] as number;
          const days = daysBetween(forecast.lastCut, forecast.dueOn);
          expect(days).toBeGreaterThanOrEqual(Math.round(Math.min(own, venue)));
          expect(days).toBeLessThanOrEqual(Math.round(Math.max(own, venue)));
          expect(forecast.earliest <= forecast.dueOn && forecast.dueOn <= forecast.latest).toBe(true);
        });
      }),
    );
  });
});
