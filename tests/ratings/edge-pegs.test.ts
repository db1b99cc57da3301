import { beforeAll, describe, expect, test } from 'vitest';
import { addDays, monthOf } from '../../src/domain/day.ts';
import type { FishingEvent, Session } from '../../src/domain/session.ts';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import type { FeatureMonth } from '../../src/ratings/ratings.ts';
import { seededChance } from '../demo/chance.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

/**
 * Common practice, no source: anglers say that edge pegs (corners and margins) pay in warm water and fall off from late
 * autumn, when the fish leave the edges. On a venue simulated to do just that, the ratings must say so.
 */
describe('corners and margins on a water whose edges fall off in the cold', () => {
  const EDGE_SWING = 0.45;
  const pegs = Array.from({ length: 30 }, (_, i) =>
    examplePeg(String(i + 1), {
      features: [['corner'], ['margin'], ['bay'], ['margin'], []][i % 5] as string[],
    }),
  );
  let months: readonly FeatureMonth[];
  beforeAll(() => {
    const settings = {
      ...EXAMPLE_SETTINGS,
      features: ['corner', 'margin', 'bay'].map((id) => ({ id, name: id })),
    };
    const venue = exampleVenue({ settings, pegs, ...edgeLog() });
    months = bagTables(rateBag(venue, fitBag(venue, 'total'))).featureMonths;
  }, 60_000);

  function edgeLog(): { events: FishingEvent[]; sessions: Session[] } {
    const chance = seededChance(11);
    const anglers = Array.from({ length: 60 }, (_, i) => ({ ref: `a-${i}`, effect: 0.35 * chance.normal() }));
    const events = Array.from({ length: 156 }, (_, i) => exampleEvent(`e-${i}`, { day: addDays('2023-01-07', 7 * i) }));
    const sessions = events.flatMap((event) => {
      const warmth = -Math.cos(((monthOf(event.day) - 1) * Math.PI) / 6);
      const day = 1.5 + 0.8 * warmth + 0.4 * chance.normal();
      const rods = chance.shuffled(anglers);
      return chance
        .shuffled(pegs)
        .slice(0, 22)
        .map(({ peg, features }, i) => {
          const edge = features.some((feature) => feature === 'corner' || feature === 'margin')
            ? EDGE_SWING * warmth
            : 0;
          const kilograms = Math.exp(day + edge + rods[i]!.effect + 0.6 * chance.normal());
          return exampleSession(event.id, peg, 'weighed', 1000 * kilograms, { angler: rods[i]!.ref });
        });
    });
    return { events, sessions };
  }

  const of = (feature: string, month: number) => months.find((row) => row.feature === feature && row.month === month)!;

  describe.each(['corner', 'margin'])('%s', (feature) => {
    test.each([6, 7, 8])('stands above par in month %i, clear of it', (month) => {
      expect(of(feature, month).low80).toBeGreaterThan(1);
    });

    test.each([11, 12, 1])('stands below par in month %i, clear of it', (month) => {
      expect(of(feature, month).high80).toBeLessThan(1);
    });
  });

  test('bays, which have no such year, keep about par through it', () => {
    const swing = (feature: string) => of(feature, 7).logWorth - of(feature, 1).logWorth;
    expect(Math.abs(swing('bay'))).toBeLessThan(0.25 * swing('margin'));
  });
});
