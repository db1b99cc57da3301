import { describe, expect, test } from 'vitest';
import { fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { framingMonths } from '../../src/ratings/framing-months.ts';
import { stretchWeights } from '../../src/ratings/water-levels.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

const SIZE = { seed: 12, waters: 2, pegs: 30, anglers: 60, events: 120, features: 3 } as const;

describe('how a water fished beside now', () => {
  const { venue } = simulateFromModel({ ...SIZE, stocking: Math.log(3) });
  const rated = rateBag(venue, fitBag(venue, 'total'));

  test('is told before and after a stocking, of that water alone', () => {
    expect(rated.levels.map(({ water }) => water)).toEqual(['water-1', 'water-1']);
    const [before, now] = rated.levels;
    expect(Math.abs(before!.logLevel + Math.log(3))).toBeLessThan(3 * before!.sd);
    expect(before!.high80).toBeLessThan(0.8);
    expect(now).toMatchObject({ logLevel: 0, sd: 0 });
    expect(before!.until < venue.waters[0]!.stocked![0]!.on).toBe(true);
    expect(now!.from >= venue.waters[0]!.stocked![0]!.on).toBe(true);
  });

  test('moves the weight to frame to what it takes now', () => {
    const drift = { levels: rated.levels, eventSd: rated.outlook.eventSd };
    const meanOf = (rows: ReturnType<typeof framingMonths>) => {
      const logs = rows.flatMap(({ water, frameKg }) =>
        water === 'water-1' && frameKg !== null ? Math.log(frameKg) : [],
      );
      return logs.reduce((sum, value) => sum + value, 0) / logs.length;
    };
    const after = { ...venue, events: venue.events.filter(({ day }) => day >= venue.waters[0]!.stocked![0]!.on) };
    const [flat, now, truth] = [framingMonths(venue), framingMonths(venue, drift), framingMonths(after)].map(meanOf);
    expect(truth! - flat!).toBeGreaterThan(0.2);
    expect(truth! - now!).toBeLessThan(0.75 * (truth! - flat!));
    expect(framingMonths(venue, drift).filter(({ water }) => water === 'water-2')).toEqual(
      framingMonths(venue).filter(({ water }) => water === 'water-2'),
    );
  });

  test('is not told where no level changed', () => {
    const { venue: same } = simulateFromModel(SIZE);
    expect(rateBag(same, fitBag(same, 'total')).levels).toEqual([]);
  });
});

describe('stretchWeights', () => {
  test('are the inverse of a mean’s variance with the difference counted as an error', () => {
    const weights = stretchWeights(
      [
        { events: 4, level: { logLevel: 0.6, sd: 0 } },
        { events: 4, level: null },
      ],
      0.6,
    );
    // 4 events: 1 / (0.36 / 4 + 0.36) against 1 / (0.36 / 4): a fifth.
    expect(weights[0]! / weights[1]!).toBeCloseTo(0.2, 12);
  });
});
