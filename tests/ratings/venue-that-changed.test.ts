import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import type { Peg } from '../../src/domain/peg.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { modelForecaster } from '../../src/ratings/forecasters.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import { ratingModel, TERM } from '../../src/ratings/rating-model.ts';
import { type ModelSession, sessionsInModel } from '../../src/ratings/sessions-in-model.ts';
import { MONTH_SEASON } from '../../src/ratings/temperature-season.ts';
import { seededChance } from '../demo/chance.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

/** A log of weekly matches, a little over a year, on the stands that were fished each day. */
function fished(stands: readonly Peg[], logBag: (peg: Peg, day: string) => number): Pick<Venue, 'events' | 'sessions'> {
  const chance = seededChance(11);
  const events = Array.from({ length: 60 }, (_, i) => exampleEvent(`e-${i}`, { day: addDays('2025-10-01', 7 * i) }));
  return {
    events,
    sessions: events.flatMap(({ id, day }) =>
      stands
        .filter(({ retired }) => retired === undefined || day < retired.from)
        .map((peg, i) =>
          exampleSession(id, peg.peg, 'weighed', 1000 * Math.exp(1 + logBag(peg, day) + 0.3 * chance.normal()), {
            angler: `a-${(i * 5) % 7}`,
          }),
        ),
    ),
  };
}

const isBefore =
  (day: string) =>
  ({ event }: ModelSession) =>
    event.day < day;

const NOW = Array.from({ length: 6 }, (_, i) => examplePeg(String(i + 1), { features: i < 2 ? ['corner'] : [] }));

describe('a stand that is no longer fished', () => {
  const retired = examplePeg('s-old', { features: ['corner'], retired: { from: '2026-09-01' } });
  const log = fished([...NOW, retired], ({ features }) => (features.includes('corner') ? 0.4 : 0));
  const venue = exampleVenue({ pegs: NOW, retired: [retired], ...log });

  test('is rated without a slip, and stands in no table', () => {
    const ratings = rateVenue(venue, { seed: 1 });
    const pegs = [...ratings.bags.flatMap((bag) => [...bag.pegs, ...bag.pegMonths]), ...ratings.expectedBags];
    expect(new Set(pegs.map(({ peg }) => peg))).toEqual(new Set(NOW.map(({ peg }) => peg)));
    expect(ratings.bags[0]!.model.sessions).toBe(log.sessions.length);
    // Par is the mean over the pegs of today.
    const logs = ratings.bags[0]!.pegs.map(({ logWorth }) => logWorth);
    expect(logs.reduce((sum, log) => sum + log, 0)).toBeCloseTo(0, 6);
    expect(ratings.bags[0]!.featureMonths).toHaveLength(12);
  });

  test('is forecast from its features where the log before holds no day on it', () => {
    const late = examplePeg('s-late', { since: '2026-08-01', retired: { from: '2026-11-15' } });
    const added = log.events
      .filter(({ day }) => day >= '2026-08-01' && day < '2026-11-15')
      .map(({ id }) => exampleSession(id, 's-late', 'weighed', 3000));
    const { sessions } = sessionsInModel(
      { ...venue, retired: [retired, late], sessions: [...log.sessions, ...added] },
      'total',
    );
    const [past, future] = [
      sessions.filter(isBefore('2026-08-01')),
      sessions.filter((each) => !isBefore('2026-08-01')(each)),
    ];
    const forecasts = modelForecaster({ ...venue, retired: [retired, late] }, () => MONTH_SEASON)(past, future);
    for (const { logWorth, sd } of forecasts) {
      expect(logWorth).toSatisfy(Number.isFinite);
      expect(sd).toBeGreaterThan(0);
    }
  });

  test('tells of its features and of the anglers who fished it', () => {
    const without = log.sessions.filter(({ peg }) => peg !== 's-old');
    const doubt = (of: Venue) => bagTables(rateBag(of, fitBag(of, 'total'))).featureMonths.map(({ sd }) => sd);
    const minus = doubt({ ...venue, sessions: without });
    doubt(venue).forEach((sd, month) => {
      expect(sd).toBeLessThan(minus[month]!);
    });
  });
});

describe('a feature with days', () => {
  /** Lilies that were cut half-way through the log, at pegs 1 and 2, worth half as much again and more while they were there. */
  const cut = '2026-05-01';
  const pegs = NOW.map((peg, i) => ({
    ...peg,
    features: [],
    ...(i < 2 ? { datedFeatures: [{ id: 'corner', until: cut }] } : {}),
  }));
  const log = fished(pegs, (peg, day) => (Number(peg.peg) < 3 && day <= cut ? 0.8 : 0));

  test('works on the days it was there, and leaves the peg of today none of its worth', () => {
    const venue = exampleVenue({ pegs, ...log });
    const { sessions } = sessionsInModel(venue, 'total');
    const { latent } = ratingModel(venue, sessions, MONTH_SEASON);
    const rows = latent.terms.find(({ name }) => name === TERM.feature)!.rows;
    sessions.forEach(({ session, event }, row) => {
      const there = Number(session.peg) < 3 && event.day <= cut;
      expect(rows.rowStart[row + 1]! - rows.rowStart[row]!).toBe(there ? 1 : 0);
    });
    const ratings = bagTables(rateBag(venue, fitBag(venue, 'total')));
    for (const { logWorth } of ratings.pegs.slice(0, 2)) expect(Math.abs(logWorth)).toBeLessThan(0.1);
    // Nobody has it today: it is in no table of today.
    expect(ratings.featureMonths).toEqual([]);
    // The same log with the feature taken for one of every day, as before it had days.
    const always = { ...venue, pegs: NOW };
    expect(bagTables(rateBag(always, fitBag(always, 'total'))).pegs[0]!.logWorth).toBeGreaterThan(0.2);
  });

  test('tells pegs apart on the days when some had it, though all have it today', () => {
    const all = NOW.map((peg, i) => ({
      ...peg,
      features: ['corner'],
      datedFeatures: [i < 2 ? { id: 'corner' } : { id: 'corner', from: cut }],
    }));
    const venue = exampleVenue({ pegs: all, ...log });
    const { sessions } = sessionsInModel(venue, 'total');
    const { rows } = ratingModel(venue, sessions, MONTH_SEASON).latent.terms.find(({ name }) => name === TERM.feature)!;
    sessions.forEach(({ session, event }, row) => {
      const tells = Number(session.peg) < 3 && event.day < cut;
      expect(rows.rowStart[row + 1]! - rows.rowStart[row]!).toBe(tells ? 1 : 0);
    });
  });

  test('is forecast as it was on the day', () => {
    const venue = exampleVenue({ pegs, ...log });
    const { sessions } = sessionsInModel(venue, 'total');
    const past = sessions.filter(isBefore('2026-04-01'));
    const future = sessions.filter(({ event, session }) => event.day >= '2026-04-01' && session.peg === '1');
    const forecasts = modelForecaster(venue, () => MONTH_SEASON)(past, future);
    const mean = (of: typeof forecasts) => of.reduce((sum, { logWorth }) => sum + logWorth, 0) / of.length;
    const before = forecasts.filter((_, i) => future[i]!.event.day <= cut);
    const after = forecasts.filter((_, i) => future[i]!.event.day > cut);
    expect(before.length * after.length).toBeGreaterThan(0);
    expect(mean(before) - mean(after)).toBeGreaterThan(0.3);
  });
});
