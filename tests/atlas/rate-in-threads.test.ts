import { describe, expect, test } from 'vitest';
import { rateInThreads } from '../../src/atlas/rate-in-threads.ts';
import { claimTask } from '../../src/atlas/shared-tasks.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

const { venue } = simulateFromModel({ seed: 9, waters: 1, pegs: 16, anglers: 30, events: 50, features: 2 });
const withParts = {
  ...venue,
  sessions: venue.sessions.map((session, i) => ({
    ...session,
    bait: ['corn', 'maggot'][i % 2]!,
    parts: { silvers: { weightGrams: session.weightGrams! / 2 } },
  })),
};

describe('rateInThreads', () => {
  test('gives the bytes of one thread', async () => {
    const one = rateVenue(withParts, { seed: 1 });
    const two = await rateInThreads(withParts, { seed: 1 }, 2);
    expect(one.bags.length).toBeGreaterThan(1);
    expect(JSON.stringify(two)).toBe(JSON.stringify(one));
  }, 60_000);

  test('tells of what either thread works on', async () => {
    const told: string[] = [];
    await rateInThreads(withParts, { seed: 1, progress: (what) => told.push(what) }, 2);
    expect(told).toEqual(expect.arrayContaining(['first look', 'whole bag', 'silvers', 'back-test: model']));
  }, 60_000);

  test('does what a thread that cannot start does not bring', async () => {
    const two = await rateInThreads(venue, { seed: 1 }, 2, '/nowhere/at-all.ts');
    expect(JSON.stringify(two)).toBe(JSON.stringify(rateVenue(venue, { seed: 1 })));
  }, 60_000);

  test('lets one alone take a task', () => {
    const claims = new Int32Array(new SharedArrayBuffer(8));
    expect([claimTask(claims, 1), claimTask(claims, 1), claimTask(claims, 0)]).toEqual([true, false, true]);
  });
});
