import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import { partBacktests } from '../../src/ratings/part-backtest.ts';
import { makeVenue } from '../demo/make-venue.ts';

describe('partBacktests', () => {
  const { venue } = makeVenue({ seed: 3 });
  const yearFrom = addDays(venue.settings.guideDay, -365);
  const parts = partBacktests(venue, yearFrom, firstLook(venue));

  test('holds the weight of every part against a year unseen, of a part often missing where there is some', () => {
    expect(parts.map(({ part, isWhereAny }) => [part, isWhereAny])).toEqual([
      ['silvers', false],
      ['carp', true],
    ]);
    for (const { calibration, coverage80, sessions } of parts) {
      expect(sessions).toBeGreaterThan(200);
      expect(Math.abs(coverage80! - 0.8)).toBeLessThan(0.08);
      for (const { stated, happened } of calibration) expect(Math.abs(happened - stated)).toBeLessThan(0.1);
    }
  });

  test('says nothing of parts that were weighed in too few matches', () => {
    const few = new Set(venue.events.slice(0, 5).map(({ id }) => id));
    const sessions = venue.sessions.map((session) => (few.has(session.event) ? session : { ...session, parts: {} }));
    expect(partBacktests({ ...venue, sessions }, yearFrom, firstLook(venue))).toEqual([]);
  });
});
