import { describe, expect, test } from 'vitest';
import { workKeeper } from '../../src/atlas/work-keeper.ts';
import type { KeptWork, WorkKeeper } from '../../src/ratings/kept-work.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import type { RatedVenue } from '../../src/ratings/rated-venue.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

const simulated = simulateFromModel({
  seed: 17,
  waters: 2,
  pegs: 40,
  anglers: 60,
  events: 150,
  features: 4,
  dnwShare: 0.08,
  firstDay: '2022-01-05',
  lastDay: '2025-11-25',
}).venue;
const whole: RatedVenue = {
  ...simulated,
  events: simulated.events.map((event, i) => ({
    ...event,
    conditions: { ...event.conditions, waterDegreesC: 4 + ((i * 7) % 15) },
  })),
  sessions: simulated.sessions.map((session, i) => ({
    ...session,
    ...(session.weightGrams === undefined
      ? {}
      : { parts: { silvers: { weightGrams: i % 3 === 0 ? 0 : session.weightGrams / 2 } } }),
  })),
};

function until(day: string): RatedVenue {
  const events = whole.events.filter((event) => event.day <= day);
  const ids = new Set(events.map(({ id }) => id));
  return { ...whole, events, sessions: whole.sessions.filter(({ event }) => ids.has(event)) };
}

/** Rates a log as a later run does, with what an earlier one wrote, and tells what had to be worked out. */
function rateWith(venue: RatedVenue, before: KeptWork) {
  const keeper = workKeeper(JSON.parse(JSON.stringify(before)));
  const workedOut: string[] = [];
  const counting: WorkKeeper = {
    ...keeper,
    of: (inputs, work) =>
      keeper.of(inputs, () => {
        workedOut.push(inputs.find((input) => /^(ground|first look|deviations|forecasts)$/.test(input))!);
        return work();
      }),
  };
  const ratings = rateVenue(venue, { seed: 1, keeper: counting });
  return { ratings: JSON.stringify(ratings), workedOut, kept: keeper.kept() };
}

const lastDays = [...new Set(whole.events.map(({ day }) => day))];
const last = lastDays.at(-1)!;
const inItsMonth = lastDays.filter((day) => day.startsWith(last.slice(0, 7)));
const monthBefore = lastDays.filter((day) => day < inItsMonth[0]!).at(-1)!;

describe('a match more', () => {
  test('in the same month rests on what was kept, and gives the bytes of a run from nothing', () => {
    expect(inItsMonth.length).toBeGreaterThan(1);
    const before = rateWith(until(inItsMonth.at(-2)!), {});
    const after = rateWith(whole, before.kept);
    expect(after.ratings).toBe(rateWith(whole, {}).ratings);
    expect(after.workedOut).not.toContain('ground');
    expect(after.workedOut).not.toContain('first look');
    expect(after.workedOut).not.toContain('deviations');
    expect(before.workedOut).toEqual(expect.arrayContaining(['ground', 'first look', 'deviations']));
  }, 300_000);

  test('of a new month has no other month of the back-test forecast again', () => {
    const before = rateWith(until(monthBefore), {});
    const after = rateWith(whole, before.kept);
    expect(after.ratings).toBe(rateWith(whole, {}).ratings);
    const forecasts = (of: readonly string[]) => of.filter((work) => work === 'forecasts').length;
    // By month and by temperature, and each part's year as a whole.
    expect(forecasts(before.workedOut)).toBeGreaterThan(20);
    expect(forecasts(after.workedOut)).toBeLessThanOrEqual(3);
    expect(after.workedOut).not.toContain('first look');
  }, 300_000);

  test('that is taken back again leaves no trace', () => {
    const day = inItsMonth.at(-2)!;
    const first = rateWith(until(day), {});
    const more = rateWith(whole, first.kept);
    expect(rateWith(until(day), more.kept).ratings).toBe(first.ratings);
  }, 300_000);
});
