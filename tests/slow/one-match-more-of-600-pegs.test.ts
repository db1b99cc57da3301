import { expect, test } from 'vitest';
import { workKeeper } from '../../src/atlas/work-keeper.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import type { RatedVenue } from '../../src/ratings/rated-venue.ts';
import { LARGE_VENUE } from '../bench/large-venue.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

test('one match more at 600 pegs rests on what was kept, and gives the bytes of a run from nothing', () => {
  const { venue } = simulateFromModel(LARGE_VENUE);
  const last = venue.events.at(-1)!;
  const before: RatedVenue = {
    ...venue,
    events: venue.events.slice(0, -1),
    sessions: venue.sessions.filter(({ event }) => event !== last.id),
  };
  const first = workKeeper();
  rateVenue(before, { seed: 1, keeper: first });
  const kept = JSON.parse(JSON.stringify(first.kept()));
  const second = workKeeper(kept);
  const warm = rateVenue(venue, { seed: 1, keeper: second });
  const isNew = (key: string) => !Object.hasOwn(kept, key);
  // The month of the new match forecast anew, by month and by temperature.
  expect(Object.keys(second.kept()).filter(isNew)).toHaveLength(2);
  expect(JSON.stringify(warm)).toBe(JSON.stringify(rateVenue(venue, { seed: 1 })));
}, 900_000);
