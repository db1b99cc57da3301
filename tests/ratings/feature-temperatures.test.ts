import { expect, test } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { featureTemperatures, fitTemperatures } from '../../src/ratings/feature-temperatures.ts';
import { seededChance } from '../demo/chance.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const PEGS = Array.from({ length: 16 }, (_, i) =>
  examplePeg(String(i + 1), { features: i % 2 === 0 ? ['corner'] : [] }),
);

function logByTemperature(degreesOf: (i: number) => number | undefined) {
  const chance = seededChance(6);
  const events = Array.from({ length: 60 }, (_, i) => {
    const waterDegreesC = degreesOf(i);
    return exampleEvent(`e-${i}`, {
      day: addDays('2024-01-06', 14 * i),
      conditions: waterDegreesC === undefined ? {} : { waterDegreesC },
    });
  });
  const sessions = events.flatMap(({ id, conditions }) =>
    PEGS.map(({ peg, features }) => {
      const edge = features.length === 0 ? 0 : 0.09 * ((conditions.waterDegreesC ?? 11) - 11);
      return exampleSession(id, peg, 'weighed', 1000 * Math.exp(1 + edge + 0.5 * chance.normal()));
    }),
  );
  return exampleVenue({ pegs: PEGS, events, sessions });
}

function tableOf(venue: Venue) {
  return featureTemperatures(venue, fitTemperatures(venue)!);
}

test('a feature that gains with every degree stands lowest in the coldest band and highest in the warmest', () => {
  const venue = logByTemperature((i) => 4 + (i % 15));
  const rows = tableOf(venue);
  expect(rows.map(({ fromDegreesC }) => fromDegreesC)).toEqual([4, 6, 8, 10, 12, 14, 16, 18]);
  expect(rows[0]!.high80).toBeLessThan(1);
  expect(rows.at(-1)!.low80).toBeGreaterThan(1);
  expect(rows[3]!.sessions).toBe(8 * 8);
});

test('events without a temperature do not count, and none at all gives no table', () => {
  const some = logByTemperature((i) => (i % 2 === 0 ? 4 + (i % 14) : undefined));
  const rows = tableOf(some);
  expect(rows.reduce((sum, { sessions }) => sum + sessions, 0)).toBe(30 * 8);
  const none = logByTemperature(() => undefined);
  expect(fitTemperatures(none)).toBeNull();
});
