import { describe, expect, test } from 'vitest';
import type { Conditions } from '../../../src/domain/session.ts';
import type { BesideOffer } from '../../../src/ratings/beside/beside-term.ts';
import { fetchAlong, fetchWeights, windTerm } from '../../../src/ratings/beside/wind-term.ts';
import type { PegGround } from '../../../src/ratings/rated-venue.ts';
import { sessionsInModel } from '../../../src/ratings/sessions-in-model.ts';
import { examplePeg, exampleVenue } from '../../domain/example-venue.ts';
import { exampleEvent, exampleSession } from '../example-log.ts';

/** Open water to the east only: 100 m. */
const EAST: PegGround = { fetchMetres: Array.from({ length: 16 }, (_, i) => (i === 4 ? 100 : 5)) };

function offered(conditions: Conditions, ground: Record<string, PegGround> = {}, day = '2026-01-10') {
  const venue = {
    ...exampleVenue({
      pegs: [examplePeg('1'), examplePeg('2')],
      events: [{ ...exampleEvent('a'), day, conditions }],
      sessions: [exampleSession('a', '1', 'weighed', 1000), exampleSession('a', '2', 'weighed', 2000)],
    }),
    ground,
  };
  const { sessions } = sessionsInModel(venue, 'total');
  return { offer: windTerm(venue, sessions), sessions };
}

const weightsOf = ({ offer, sessions }: { offer: BesideOffer; sessions: ReturnType<typeof offered>['sessions'] }) =>
  'term' in offer ? sessions.map((session) => offer.term.weightsOf(session)) : offer.why;

describe('windTerm', () => {
  const water = exampleVenue({}).waters[0]!.id;
  const ground = { [`${water}/1`]: EAST };

  test('says why it cannot be: no wind logged, no open water mapped', () => {
    expect(weightsOf(offered({}))).toBe('no-wind-logged');
    expect(weightsOf(offered({ windFromDegrees: 90 }))).toBe('no-open-water');
  });

  test('weighs the fetch along the day’s wind, and knows nothing of a peg that is not mapped', () => {
    const wind = { windFromDegrees: 90, windMetresPerSecond: 3 };
    expect(weightsOf(offered(wind, ground))).toEqual([fetchWeights(100, false, false), null]);
  });

  test('tells a fresh wind and the warm half of the year apart', () => {
    const wind = { windFromDegrees: 90, windMetresPerSecond: 5.5 };
    expect(weightsOf(offered(wind, ground, '2026-07-04'))).toEqual([fetchWeights(100, true, true), null]);
    expect(fetchWeights(100, true, false)).not.toEqual(fetchWeights(100, false, false));
  });

  test('knows no fetch in a calm', () => {
    expect(weightsOf(offered({ windFromDegrees: 90, windMetresPerSecond: 0.2 }, ground))).toBe('no-wind-logged');
  });
});

describe('fetchAlong', () => {
  test('lies between two directions by the angle, and goes round past north', () => {
    const fetch = Array.from({ length: 16 }, (_, i) => (i === 0 ? 80 : i === 15 ? 40 : 10));
    expect(fetchAlong(fetch, 0)).toBe(80);
    expect(fetchAlong(fetch, 360)).toBe(80);
    expect(fetchAlong(fetch, 348.75)).toBeCloseTo(60, 9);
    expect(fetchAlong(fetch, 11.25)).toBeCloseTo(45, 9);
  });
});
