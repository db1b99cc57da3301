import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { roundsAtOnce } from '../../../src/commands/association/at-once.ts';

test('builds two at a time on two processors, the longest logs together, and a large log alone', () => {
  const venues = [
    { id: 'a', sessions: 10 },
    { id: 'b', sessions: 100_000 },
    { id: 'c', sessions: 900 },
    { id: 'd', sessions: 800 },
  ];
  expect(roundsAtOnce(venues, 2)).toEqual([['b'], ['c', 'd'], ['a']]);
  expect(roundsAtOnce(venues, 1)).toEqual([['b'], ['c'], ['d'], ['a']]);
});

test('builds every venue once, never more than four at once', () => {
  const venue = fc.record({ id: fc.uuid(), sessions: fc.nat(60_000) });
  fc.assert(
    fc.property(
      fc.uniqueArray(venue, { selector: ({ id }) => id }),
      fc.integer({ min: 1, max: 64 }),
      (venues, processors) => {
        const rounds = roundsAtOnce(venues, processors);
        expect(rounds.flat().sort()).toEqual(venues.map(({ id }) => id).sort());
        for (const round of rounds) expect(round.length).toBeLessThanOrEqual(Math.min(4, processors));
      },
    ),
  );
});
