import { describe, expect, test } from 'vitest';
import type { Session } from '../../src/domain/session.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { backtest, forecastByMonth } from '../../src/ratings/backtest.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import type { Forecaster } from '../../src/ratings/forecasters.ts';
import type { WorkKeeper } from '../../src/ratings/kept-work.ts';
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

  test('tests the matches of the last twelve calendar months, and no others', () => {
    expect(tested.events).toBe(venue.events.filter(({ day }) => day > '2025-11-30').length);
  });

  test('errs less than saying nothing and than plain averages, and ranks pegs', () => {
    const [model, flat, raw] = ['model', 'flat', 'peg-average'].map((name) => scoreOf(tested, name));
    expect(model!.rootMeanSquareError).toBeLessThan(flat!.rootMeanSquareError);
    expect(model!.rootMeanSquareError).toBeLessThan(raw!.rootMeanSquareError);
    expect(model!.rankAgreement).toBeGreaterThan(0.3);
    expect([flat!.rankAgreement, flat!.coverage80, raw!.coverage80]).toEqual([0, null, null]);
  });

  test('states intervals that hold about four bags in five, and chances that come true', () => {
    expect(Math.abs(scoreOf(tested, 'model').coverage80! - 0.8)).toBeLessThan(0.06);
    for (const { stated, happened } of tested.calibration) expect(Math.abs(happened - stated)).toBeLessThan(0.07);
  });

  test('has each month forecast from the days before it, and from all of them', () => {
    const { sessions } = sessionsInModel(venue, 'total');
    const year = sessions.filter(({ event }) => event.day > '2025-11-30');
    const events = [...Map.groupBy(year, ({ event }) => event.id).values()];
    const asked: { past: number; lastPast: string; firstFuture: string }[] = [];
    const spy: Forecaster = (past, future) => {
      const firstFuture = future[0]!.event.day;
      asked.push({ past: past.length, lastPast: past.at(-1)!.event.day, firstFuture });
      return future.map(() => ({ logWorth: 0, sd: null }));
    };
    const forecast = forecastByMonth(sessions, events, spy);
    expect(forecast.map((event) => event.sessions)).toEqual(events);
    expect(asked.length).toBe(12);
    for (const { past, lastPast, firstFuture } of asked) {
      expect(lastPast < `${firstFuture.slice(0, 7)}-01`).toBe(true);
      expect(past).toBe(sessions.filter(({ event }) => event.day < `${firstFuture.slice(0, 7)}-01`).length);
    }
  });

  test('tests by temperature where most matches log it, and on the same matches', () => {
    expect(tested.scores.map(({ name }) => name)).toEqual(['model', 'model-by-temperature', 'flat', 'peg-average']);
    const unlogged = { ...venue, events: venue.events.map((event) => ({ ...event, conditions: {} })) };
    expect(testOn(unlogged)!.scores.map(({ name }) => name)).toEqual(['model', 'flat', 'peg-average']);
  });

  test('tests by temperature only where the thermometer came before the first tested month', () => {
    const earlier = venue.events.filter(({ day }) => day <= '2025-11-30').map(({ id }) => id);
    const readFrom = (known: ReadonlyMap<string, { waterDegreesC: number }>) =>
      venue.events.map((event) =>
        event.day > '2025-11-30' ? event : { ...event, conditions: known.get(event.id) ?? {} },
      );
    const testedOn = (events: Venue['events']) => testOn({ ...venue, events })!.scores.map(({ name }) => name);
    expect(testedOn(readFrom(new Map()))).not.toContain('model-by-temperature');
    const lately = new Map([earlier.at(-1)!, earlier.at(-2)!].map((id, i) => [id, { waterDegreesC: 4 + 8 * i }]));
    expect(testedOn(readFrom(lately))).toContain('model-by-temperature');
  });

  test('knows nothing of who does not weigh that only the year under test shows', () => {
    const untested = new Set(venue.events.filter(({ day }) => day <= '2025-11-30').map(({ id }) => id));
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

  test('does again only what a match more changes, and tells the same as one that keeps nothing', () => {
    const last = venue.events.at(-1)!;
    const longer: Venue = {
      ...venue,
      events: [...venue.events, { ...last, id: 'one-more' }],
      sessions: [
        ...venue.sessions,
        ...venue.sessions
          .filter(({ event }) => event === last.id)
          .map((session, i, all) => ({ ...session, event: 'one-more', weightGrams: all.at(-1 - i)!.weightGrams })),
      ] as Venue['sessions'],
    };
    const anew = backtest(longer)!;
    const work = new Map<string, unknown>();
    let done = 0;
    const keeper: WorkKeeper = {
      of: <Result>(inputs: readonly string[], doIt: () => Result): Result => {
        const key = inputs.join();
        if (!work.has(key)) {
          done++;
          work.set(key, JSON.parse(JSON.stringify(doIt())));
        }
        return work.get(key) as Result;
      },
      beginnings: (list) => (count) => JSON.stringify(list.slice(0, count)),
    };
    backtest(venue, { keeper });
    expect(done).toBeGreaterThan(20);
    done = 0;
    const kept = backtest(longer, { keeper })!;
    // The last month, by the month and by temperature.
    expect(done).toBe(2);
    expect(kept.scores.map(({ name }) => name)).toEqual(anew.scores.map(({ name }) => name));
    kept.scores.forEach((score, i) => {
      expect(score.rootMeanSquareError).toBeCloseTo(anew.scores[i]!.rootMeanSquareError, 7);
      expect(score.coverage80).toBe(anew.scores[i]!.coverage80);
    });
    kept.besides.forEach((beside, i) => {
      const other = anew.besides[i]!;
      expect('errorWith' in beside).toBe('errorWith' in other);
      if (!('errorWith' in beside && 'errorWith' in other)) return;
      expect(beside.errorWith).toBeCloseTo(other.errorWith, 6);
      expect(beside.isEarned).toBe(other.isEarned);
    });
    done = 0;
    // A match of long ago changes all that came after it.
    const [first] = venue.sessions;
    backtest({ ...venue, sessions: [{ ...first!, weightGrams: 1 }, ...venue.sessions.slice(1)] }, { keeper });
    expect(done).toBeGreaterThan(20);
  });

  test('needs a log that began before the year under test', () => {
    const recent = venue.events.filter(({ day }) => day > '2025-11-30').map(({ id }) => id);
    expect(testOn({ ...venue, sessions: venue.sessions.filter(({ event }) => recent.includes(event)) })).toBeNull();
    expect(testOn({ ...venue, sessions: [] })).toBeNull();
  });
});
