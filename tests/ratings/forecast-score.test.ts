import { describe, expect, test } from 'vitest';
import { calibrationOf, type ForecastEvent, scoreForecasts } from '../../src/ratings/forecast-score.ts';
import type { ModelSession } from '../../src/ratings/sessions-in-model.ts';
import { seededChance } from '../demo/chance.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const seen = (logKg: number, isCensored = false): ModelSession => ({
  event: exampleEvent('a'),
  session: exampleSession('a', '1', isCensored ? 'dnw' : 'weighed'),
  logKg,
  isCensored,
});

/** Events whose bags scatter by `sd` about pegs known exactly, forecast with a stated spread. */
function simulated(events: number, sd: number, stated: number, dnwBelow?: number): ForecastEvent[] {
  const chance = seededChance(5);
  return Array.from({ length: events }, () => {
    const day = chance.normal();
    const pegs = Array.from({ length: 24 }, () => 0.4 * chance.normal());
    const bags = pegs.map((peg) => day + peg + sd * chance.normal());
    const bound = dnwBelow === undefined ? Number.NEGATIVE_INFINITY : day + dnwBelow;
    return {
      sessions: bags.map((bag) => (bag < bound ? seen(bound, true) : seen(bag))),
      forecasts: pegs.map((logWorth) => ({ logWorth, sd: stated })),
    };
  });
}

describe('scoreForecasts', () => {
  test('compares about the event’s means, so that the day does not count', () => {
    const event = {
      sessions: [seen(5), seen(6), seen(7)],
      forecasts: [-1, 0, 1].map((logWorth) => ({ logWorth, sd: null })),
    };
    expect(scoreForecasts([event])).toEqual({
      rootMeanSquareError: 0,
      rankAgreement: 1,
      coverage80: null,
    });
  });

  test('leaves DNWs out of the error, for what they weighed is not known', () => {
    const event = {
      sessions: [seen(1), seen(3), seen(0, true)],
      forecasts: [0, 0, 9].map((logWorth) => ({ logWorth, sd: null })),
    };
    expect(scoreForecasts([event]).rootMeanSquareError).toBe(1);
  });

  test('finds four bags in five inside the stated interval of an honest forecast, fewer where it is too sure', () => {
    expect(scoreForecasts(simulated(100, 0.6, 0.6)).coverage80).toBeCloseTo(0.8, 1.5);
    expect(scoreForecasts(simulated(100, 0.6, 0.3)).coverage80).toBeLessThan(0.55);
  });
});

describe('calibrationOf', () => {
  test('lies on the line for an honest forecast, also with DNWs', () => {
    for (const events of [simulated(100, 0.6, 0.6), simulated(100, 0.6, 0.6, -0.7)]) {
      for (const { stated, happened } of calibrationOf(events)) expect(happened).toBeCloseTo(stated, 1.5);
    }
  });

  test('bends where the forecast is too sure', () => {
    const points = calibrationOf(simulated(100, 0.6, 0.2));
    expect(points[0]!.happened).toBeGreaterThan(0.25);
    expect(points[8]!.happened).toBeLessThan(0.75);
  });

  test('is empty where no spread was stated', () => {
    expect(
      calibrationOf([{ sessions: [seen(1), seen(2)], forecasts: [0, 1].map((logWorth) => ({ logWorth, sd: null })) }]),
    ).toEqual([]);
  });
});
