import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heavierThan, nearestMoment, paceOf, shareBy } from '../../src/match-day/pace.ts';

const hoursOf = (shares: readonly number[], matchHours = shares.length) => ({ shares, matchHours });
const carp = (minute: number, grams: number) => ({ minute, part: 'carp', grams });

describe('the pace of a bag', () => {
  it('tells what is needed an hour from here and where it would end', () => {
    // Four kilograms in two of five hours, eight aimed at: four to go in three hours; ten at the end.
    expect(paceOf([carp(30, 1500), carp(110, 2500)], 120, 300, 8000)).toEqual({
      caughtGrams: 4000,
      minutesLeft: 180,
      state: 'fishing',
      stillGrams: 4000,
      neededAnHour: 4000 / 3,
      endGrams: 10_000,
    });
  });

  it('forecasts nothing from the first minutes, and needs nothing once it is there or over', () => {
    expect(paceOf([carp(2, 6000)], 5, 300, 8000).endGrams).toBeNull();
    expect(paceOf([carp(2, 9000)], 100, 300, 8000)).toMatchObject({ stillGrams: 0, neededAnHour: null });
    expect(paceOf([carp(2, 6000)], 301, 300, 8000)).toMatchObject({
      state: 'over',
      stillGrams: 2000,
      neededAnHour: null,
    });
    expect(paceOf([], -20, 300, 8000)).toMatchObject({ state: 'before', minutesLeft: 300, neededAnHour: 1600 });
  });

  it('spreads a bag by the shares of the hours where they are known, evenly within each', () => {
    expect(shareBy(60, 300)).toBeCloseTo(0.2, 12);
    expect(shareBy(90, 180, hoursOf([0.1, 0.3, 0.6]))).toBeCloseTo(0.25, 12);
    expect(shareBy(400, 180, hoursOf([0.1, 0.3, 0.6]))).toBe(1);
    // The third hour of two and a half is half an hour; a match of six hours has twice the time for each share.
    const shorter = hoursOf([0.1, 0.3, 0.6], 2.5);
    expect(shareBy(135, 150, shorter)).toBeCloseTo(0.7, 12);
    expect(shareBy(150, 150, shorter)).toBeCloseTo(1, 12);
    // In a match of five hours that half hour is a whole one, and the first two hours are two each.
    expect(shareBy(240, 300, shorter)).toBeCloseTo(0.4, 12);
    expect(shareBy(270, 300, shorter)).toBeCloseTo(0.7, 12);
    expect(shareBy(180, 360, hoursOf([0.1, 0.3, 0.6]))).toBeCloseTo(0.25, 12);
  });

  it('ends where the hours say, and says no end while next to nothing can have come', () => {
    const shares = [0.02, 0.08, 0.2, 0.3, 0.4];
    // A tenth of a bag has come by the second hour: two kilograms then are twenty at the end, and five by even hours.
    expect(paceOf([carp(100, 2000)], 120, 300, 8000, hoursOf(shares)).endGrams).toBeCloseTo(20_000, 6);
    expect(paceOf([carp(100, 2000)], 120, 300, 8000).endGrams).toBeCloseTo(5000, 6);
    expect(paceOf([carp(50, 2000)], 60, 300, 8000, hoursOf(shares)).endGrams).toBeNull();
  });

  it('of a bag by the hour grows with the clock from nothing to the whole, whatever the hours', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 30, max: 1440 }),
        (parts, minutes) => {
          const whole = parts.reduce((sum, part) => sum + part, 0);
          const shares = parts.map((part) => part / whole);
          const along = Array.from({ length: 41 }, (_, i) => shareBy((minutes * i) / 40, minutes, hoursOf(shares)));
          expect(along[0]).toBe(0);
          expect(along.at(-1)).toBeCloseTo(1, 9);
          for (let i = 1; i < along.length; i++) expect(along[i]!).toBeGreaterThan(along[i - 1]! - 1e-12);
        },
      ),
    );
  });

  it('is fair at every moment: what is needed in the time left makes up the target', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ minute: fc.integer({ min: 0, max: 299 }), grams: fc.integer({ min: 1, max: 20_000 }) })),
        fc.integer({ min: 0, max: 299 }),
        fc.integer({ min: 1, max: 60_000 }),
        (caught, minute, target) => {
          const pace = paceOf(
            caught.map((each) => ({ ...each, part: 'silvers' })),
            minute,
            300,
            target,
          );
          const rest = ((pace.neededAnHour ?? 0) * pace.minutesLeft) / 60;
          expect(Math.max(target, pace.caughtGrams)).toBeCloseTo(pace.caughtGrams + rest, 6);
        },
      ),
    );
  });
});

describe('where a bag stands among percentiles', () => {
  it('is told between two of them by proportion, and by the lowest of equal ones', () => {
    const percentiles = [0, 0, 0, 1000, 2000];
    expect(heavierThan(0, percentiles)).toBe(0);
    expect(heavierThan(500, percentiles)).toBe(62.5);
    expect(heavierThan(1000, percentiles)).toBe(75);
    expect(heavierThan(2001, percentiles)).toBe(100);
  });
});

describe('a time on the clock', () => {
  it('past midnight means yesterday’s evening, and before it the coming morning', () => {
    expect(nearestMoment('22:00', new Date(2026, 10, 27, 0, 30))).toEqual(new Date(2026, 10, 26, 22, 0));
    expect(nearestMoment('06:30', new Date(2026, 10, 26, 23, 50))).toEqual(new Date(2026, 10, 27, 6, 30));
    expect(nearestMoment('10:00', new Date(2026, 10, 26, 14, 0))).toEqual(new Date(2026, 10, 26, 10, 0));
  });

  it.each(['', '25:00', '10:60', 'ten', '1000'])('is no time: %j', (text) => {
    expect(nearestMoment(text, new Date(2026, 10, 26))).toBeNull();
  });
});
