import { expect, test } from 'vitest';
import { readVenue } from '../../src/content/read-venue.ts';
import { smallVenue } from './small-venue.ts';

test('reads a whole folder without a fault', () => {
  const { venue, faults, leftOut, counts } = readVenue(smallVenue());
  expect(faults).toEqual([]);
  expect(leftOut).toEqual([]);
  expect(counts).toEqual({
    files: 12,
    waters: 1,
    pegs: 3,
    events: 1,
    sessions: 3,
    soundings: 2,
    gaugeReadings: 2,
    notices: 1,
    rounds: 1,
    photos: 0,
  });
  expect(venue?.pegs.map(({ peg }) => peg)).toEqual(['1', '2', '10']);
  expect(venue?.sessions[0]).toEqual({
    event: '2026-05-02-mill-pond',
    section: 'A',
    water: 'mill-pond',
    peg: '1',
    angler: 'a-7f3k9q',
    status: 'weighed',
    weightGrams: 376 * (453.59237 / 16),
    parts: {
      silvers: { weightGrams: 56 * (453.59237 / 16), count: 40 },
      carp: { weightGrams: 20 * 453.59237, count: 6 },
    },
  });
  expect(venue?.soundings[1]).toEqual({
    water: 'mill-pond',
    fromPeg: { peg: '1', distanceMetres: 6 },
    depthMetres: 1.3716,
    day: '2026-04-01',
    file: 'soundings/mill-pond.csv',
    line: 3,
  });
  expect(venue?.pegs[0]?.notes).toEqual([
    { heading: '', months: [], markdown: 'Reeds to the left.' },
    { heading: 'Spring', months: [3, 4, 5], markdown: 'Feed the margin late.' },
  ]);
  expect(venue?.waters[0]?.map.islands).toHaveLength(1);
  expect(venue?.gauge[1]).toEqual({ water: 'mill-pond', day: '2026-11-12', levelMetres: -0.05 });
});
