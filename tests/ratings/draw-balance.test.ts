import { describe, expect, test } from 'vitest';
import { backtest } from '../../src/ratings/backtest.ts';
import { drawBalance } from '../../src/ratings/draw-balance.ts';
import type { ForecastEvent } from '../../src/ratings/forecast-score.ts';
import { seededChance } from '../demo/chance.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

/** Events of ten, whose anglers sit on pegs drawn by lot, or the better ones on the better pegs. */
function drawn(isSorted: boolean): ForecastEvent[] {
  const chance = seededChance(4);
  return Array.from({ length: 30 }, () => {
    const anglers = Array.from({ length: 10 }, () => chance.normal()).sort((a, b) => a - b);
    const pegs = Array.from({ length: 10 }, () => chance.normal());
    if (isSorted) pegs.sort((a, b) => a - b);
    return { sessions: [], forecasts: pegs.map((logWorth, i) => ({ logWorth, sd: 1, angler: anglers[i]! })) };
  });
}

describe('drawBalance', () => {
  test('finds nothing in a lottery, and everything where the best take the best', () => {
    expect(Math.abs(drawBalance(drawn(false))!.z)).toBeLessThan(2);
    expect(drawBalance(drawn(true))!.z).toBeGreaterThan(10);
    expect(drawBalance(drawn(true))!.correlation).toBeGreaterThan(0.8);
  });

  test('has the permutation variance: z scatters by 1 over lotteries', () => {
    const z = Array.from({ length: 200 }, (_, seed) => {
      const chance = seededChance(seed);
      const forecasts = () =>
        Array.from({ length: 12 }, () => ({ logWorth: chance.normal(), sd: 1, angler: chance.normal() }));
      return drawBalance(Array.from({ length: 5 }, () => ({ sessions: [], forecasts: forecasts() })))!.z;
    });
    const variance = z.reduce((sum, value) => sum + value * value, 0) / z.length;
    // Chi-squared on 200 over 200: sd 0.1.
    expect(Math.abs(variance - 1)).toBeLessThan(0.3);
  });

  test('says nothing where anglers are not known', () => {
    const unknown = drawn(false).map(({ sessions, forecasts }) => ({
      sessions,
      forecasts: forecasts.map((each) => ({ ...each, angler: null })),
    }));
    expect(drawBalance(unknown)).toBeNull();
  });
});

describe('the back-test', () => {
  const { venue } = simulateFromModel({
    seed: 51,
    waters: 1,
    pegs: 20,
    anglers: 40,
    events: 90,
    features: 3,
    field: 12,
  });

  test('finds a simulated draw to be a lottery', () => {
    expect(Math.abs(backtest(venue)!.balance!.z)).toBeLessThan(2.6);
  });
});
