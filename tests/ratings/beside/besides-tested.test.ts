import { describe, expect, test } from 'vitest';
import { backtest } from '../../../src/ratings/backtest.ts';
import { fitBag } from '../../../src/ratings/bag-model.ts';
import { besideWorths } from '../../../src/ratings/beside/beside-worths.ts';
import type { BesideTest } from '../../../src/ratings/ratings.ts';
import { type SimulationOptions, simulateFromModel } from '../../demo/simulate-from-model.ts';

const SIZE: Partial<SimulationOptions> = { seed: 51, waters: 1, pegs: 30, anglers: 60, events: 110, features: 3 };

function testsOf(options: Partial<SimulationOptions>): Record<string, BesideTest> {
  const { venue, ground } = simulateFromModel({ ...SIZE, ...options });
  return Object.fromEntries(backtest({ ...venue, ground })!.besides.map((each) => [each.of, each]));
}

describe('besidesTested', () => {
  test('finds room, wind, depth and colour where bags were drawn with them', () => {
    const tests = testsOf({ field: 18, room: 0.6, wind: 0.5, depth: 0.8, colour: 0.8 });
    for (const of of ['room', 'wind', 'depth', 'colour']) {
      const told = tests[of]!;
      if ('why' in told) throw new Error(`${of}: ${told.why}`);
      expect(told, of).toMatchObject({ isEarned: true });
      expect(told.errorWith).toBeLessThan(told.errorWithout);
    }
  });

  test('gives none of them a place where they do nothing', () => {
    const tests = testsOf({ field: 18, wind: 0, depth: 0, colour: 0 });
    for (const told of Object.values(tests)) expect(told, told.of).toMatchObject({ isEarned: false });
  });

  test('says why where a log tells no wind and no depth', () => {
    const tests = testsOf({ field: 18 });
    expect(tests.wind).toEqual({ of: 'wind', why: 'no-wind-logged' });
    expect(tests.depth).toEqual({ of: 'depth', why: 'not-plumbed' });
    expect(tests.colour).toEqual({ of: 'colour', why: 'one-colour' });
  });

  test.each([
    ['pegs fished alone', 1],
    ['two anglers a match', 2],
  ])('is defined with %s', (_, field) => {
    const { venue, ground } = simulateFromModel({ ...SIZE, field, wind: 0.3, depth: 0.3, colour: 0.3 });
    const worths = besideWorths({ ...venue, ground }, fitBag({ ...venue, ground }, 'total'));
    for (const { worth, low80, high80 } of worths) {
      expect(Number.isFinite(worth) && low80 <= worth && worth <= high80).toBe(true);
    }
    for (const told of backtest({ ...venue, ground })?.besides ?? []) {
      for (const value of Object.values(told)) expect(value).not.toBeNaN();
    }
  });
});

describe('besideWorths', () => {
  test('tells the curves that bags were drawn with', () => {
    const { venue, ground } = simulateFromModel({ ...SIZE, field: 18, room: 0.6, wind: 0.5, depth: 0.8, colour: 0.8 });
    const rated = { ...venue, ground };
    const worths = besideWorths(rated, fitBag(rated, 'total'));
    const logWorth = (of: string, group: string, at: number) =>
      Math.log(worths.find((row) => row.of === of && row.group === group && row.at === at)!.worth);
    expect(logWorth('room', '', 4) - logWorth('room', '', 0)).toBeCloseTo(0.6, 0);
    const fresh = 'force 4 and over, April to September';
    const light = 'up to force 3, April to September';
    const rise = (group: string) => logWorth('wind', group, 100) - logWorth('wind', group, 5);
    expect(rise(fresh)).toBeGreaterThan(rise(light));
    expect(rise(light)).toBeGreaterThan(0.2);
    const deep = (season: string) =>
      logWorth('depth', `at 6 m, ${season}`, 3) - logWorth('depth', `at 6 m, ${season}`, 1);
    expect(deep('winter')).toBeGreaterThan(0.15);
    expect(deep('summer')).toBeLessThan(-0.1);
    const edge = (colour: string) =>
      logWorth('colour', `${colour} water`, 1.2) - logWorth('colour', `${colour} water`, 0.6);
    expect(edge('clear')).toBeGreaterThan(0.1);
    expect(edge('coloured')).toBeLessThan(-0.1);
  });
});
