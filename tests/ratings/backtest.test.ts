import { describe, expect, test } from 'vitest';
import type { Session } from '../../src/domain/session.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { backtest, forecastByMonth } from '../../src/ratings/backtest.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import type { Forecaster } from '../../src/ratings/forecasters.ts';
import type { Backtest } from '../../src/ratings/ratings.ts';
import { sessionsInModel } from '../../src/ratings/sessions-in-model.ts';
import { type SimulationOptions, simulateFromModel } from '../demo/simulate-from-model.ts';

const SIZE: Partial<SimulationOptions> = {
  seed: 51,
  waters: 1,
  pegs: 20,
  anglers: 40,
  events: 90,
  features: 3,
  dnwShare: 0.08,
};
const SPREAD = { event: 0.7, angler: 0.3, peg: 0.35, feature: 0.2, featureMonth: 0.25, residual: 0.6 };

function testOn(venue: Venue): Backtest | null {
  return backtest(venue);
}
const scoreOf = (tested: Backtest, name: string) => tested.scores.find((score) => score.name === name)!;

describe('backtest', () => {
  const { venue } = simulateFromModel({ ...SIZE, sd: SPREAD });
  const tested = testOn(venue)!;

  test('tests the matches of the last year, and no others', () => {
    expect(tested.events).toBe(venue.events.filter(({ day }) => day > '2025-11-08').length);
  });

  test('errs less than saying nothing and than plain averages, and ranks pegs', () => {
    const [model, flat, raw] = ['model', 'flat guess', 'raw peg average'].map((name) => scoreOf(tested, name));
    expect(model!.rootMeanSquareError).toBeLessThan(flat!.rootMeanSquareError);
    expect(model!.rootMeanSquareError).toBeLessThan(raw!.rootMeanSquareError);
    expect(model!.rankAgreement).toBeGreaterThan(0.3);
    expect([flat!.rankAgreement, flat!.coverage80, raw!.coverage80]).toEqual([0, null, null]);
  });

  test('states intervals that hold about four bags in five, and chances that come true', () => {
    expect(Math.abs(scoreOf(tested, 'model').coverage80! - 0.8)).toBeLessThan(0.06);
    for (const { stated, happened } of tested.calibration) expect(Math.abs(happened - stated)).toBeLessThan(0.07);
  });

  test('has each month foretold from the days before it, and from all of them', () => {
    const { sessions } = sessionsInModel(venue, 'total');
    const year = sessions.filter(({ event }) => event.day > '2025-11-08');
    const events = [...Map.groupBy(year, ({ event }) => event.id).values()];
    const asked: { past: number; lastPast: string; firstFuture: string }[] = [];
    const spy: Forecaster = (past, future) => {
      const firstFuture = future[0]!.event.day;
      asked.push({ past: past.length, lastPast: past.at(-1)!.event.day, firstFuture });
      return future.map(() => ({ logWorth: 0, sd: null }));
    };
    const foretold = forecastByMonth(sessions, events, spy);
    expect(foretold.map((event) => event.sessions)).toEqual(events);
    expect(asked.length).toBeGreaterThan(11);
    for (const { past, lastPast, firstFuture } of asked) {
      expect(lastPast < `${firstFuture.slice(0, 7)}-01`).toBe(true);
      expect(past).toBe(sessions.filter(({ event }) => event.day < `${firstFuture.slice(0, 7)}-01`).length);
    }
  });

  test('tests by temperature where most matches log it, and on the same matches', () => {
    expect(tested.scores.map(({ name }) => name)).toEqual([
      'model',
      'model by temperature',
      'flat guess',
      'raw peg average',
    ]);
    const unlogged = { ...venue, events: venue.events.map((event) => ({ ...event, conditions: {} })) };
    expect(testOn(unlogged)!.scores.map(({ name }) => name)).toEqual(['model', 'flat guess', 'raw peg average']);
  });

  test('tests by temperature only where the thermometer came before the first tested month', () => {
    // First read in the week before the year under test begins, a month of which that week is the start.
    const earlier = venue.events.filter(({ day }) => day <= '2025-11-08').map(({ id }) => id);
    const lately = new Map([earlier.at(-1)!, earlier.at(-2)!].map((id, i) => [id, { waterDegreesC: 4 + 8 * i }]));
    const events = venue.events.map((event) => {
      const first = lately.get(event.id);
      if (first !== undefined) return { ...event, day: '2025-11-05', conditions: first };
      return event.day <= '2025-11-08' ? { ...event, conditions: {} } : event;
    });
    expect(testOn({ ...venue, events })!.scores.map(({ name }) => name)).not.toContain('model by temperature');
  });

  test('knows nothing of who does not weigh that only the year under test shows', () => {
    const untested = new Set(venue.events.filter(({ day }) => day <= '2025-11-08').map(({ id }) => id));
    const other = venue.sessions.map((session): Session => {
      if (untested.has(session.event) || session.status !== 'dnw') return session;
      return { ...session, status: 'weighed', weightGrams: 90_000 };
    });
    expect(other).not.toEqual(venue.sessions);
    expect(firstLook({ ...venue, sessions: other }).lesson).not.toEqual(firstLook(venue).lesson);
    const sdsOf = (sessions: readonly Session[]) => {
      const told: unknown[] = [];
      backtest({ ...venue, sessions }, { report: (_, { sd, residualSd }) => told.push(sd, residualSd) });
      return told;
    };
    expect(sdsOf(other)).toEqual(sdsOf(venue.sessions));
  });

  test('needs a log that began before the year under test', () => {
    const recent = venue.events.filter(({ day }) => day > '2025-11-08').map(({ id }) => id);
    expect(testOn({ ...venue, sessions: venue.sessions.filter(({ event }) => recent.includes(event)) })).toBeNull();
    expect(testOn({ ...venue, sessions: [] })).toBeNull();
  });
});
