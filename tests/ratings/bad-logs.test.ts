import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import type { FishingEvent, Session } from '../../src/domain/session.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import type { Ratings } from '../../src/ratings/ratings.ts';
import { seededChance } from '../demo/chance.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const PEGS = Array.from({ length: 8 }, (_, i) =>
  examplePeg(String(i + 1), { features: i % 2 === 0 ? ['corner'] : [] }),
);

/** A log of ordinary matches, every week; change what makes it bad. */
function log(events: number, sessionOf: (event: FishingEvent, peg: string, i: number) => Session): Partial<Venue> {
  const matches = Array.from({ length: events }, (_, i) =>
    exampleEvent(`e-${i}`, { day: addDays('2025-01-04', 7 * i) }),
  );
  return { events: matches, sessions: matches.flatMap((event) => PEGS.map(({ peg }, i) => sessionOf(event, peg, i))) };
}

function weighedLog(events: number, changes: Partial<Session> = {}, spread = 0.5): Partial<Venue> {
  const chance = seededChance(3);
  return log(events, (event, peg, i) =>
    exampleSession(event.id, peg, 'weighed', 1000 * Math.exp(1 + spread * chance.normal()), {
      angler: `a-${(i * 5 + events) % 11}`,
      ...changes,
    }),
  );
}

/** Rates, and asks of every figure there is that it be one. */
function rate(changes: Partial<Venue>): Ratings {
  const ratings = rateVenue(exampleVenue({ pegs: PEGS, ...changes }), { seed: 1 });
  expectFigures(ratings, 'ratings');
  for (const { featureMonths, pegMonths } of ratings.bags) {
    for (const { low80, high80 } of [...featureMonths, ...pegMonths]) {
      expect(low80).toBeGreaterThan(0);
      expect(high80).toBeGreaterThanOrEqual(low80);
    }
  }
  return ratings;
}

function expectFigures(value: unknown, path: string): void {
  if (typeof value === 'number') expect(value, path).toSatisfy(Number.isFinite);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, inner] of Object.entries(value)) expectFigures(inner, `${path}.${key}`);
  } else expect(value, path).not.toBeUndefined();
}

/** Every worth at par, thin, and wide: the interval holds at least a fifth either way. */
function expectUntold({ bags }: Ratings): void {
  for (const row of [...bags[0]!.featureMonths, ...bags[0]!.pegMonths]) {
    expect(row.evidence).toBe('thin');
    expect(row.low80).toBeLessThan(1 / 1.2);
    expect(row.high80).toBeGreaterThan(1.2);
  }
  for (const row of bags[0]!.pegMonths) expect(row.worth).toBeCloseTo(1, 6);
}

describe('rating a log that tells little', () => {
  test('no sessions: every worth at par, wide and thin, and a note that says so', () => {
    const ratings = rate({ events: [], sessions: [] });
    expectUntold(ratings);
    expect(ratings.expectedBags).toEqual([]);
    expect(ratings.backtest).toBeNull();
    expect(ratings.notes[0]).toEqual({ about: 'no-session' });
  });

  test('no pegs: empty tables', () => {
    expect(rate({ pegs: [], events: [], sessions: [] }).bags[0]!.pegMonths).toEqual([]);
  });

  test('all DNW: every worth at par, and the DNWs counted', () => {
    const ratings = rate(log(10, (event, peg) => exampleSession(event.id, peg, 'dnw')));
    expectUntold(ratings);
    expect(ratings.leftOut).toEqual([{ why: 'no-bound', sessions: 80 }]);
  });

  test('all blank: worth at par, for all that is known is that nothing was weighed', () => {
    const ratings = rate(log(10, (event, peg) => exampleSession(event.id, peg, 'blank')));
    for (const row of ratings.bags[0]!.pegMonths) expect(row.worth).toBeCloseTo(1, 1);
    expect(ratings.notes[0]).toEqual({ about: 'no-session' });
    expect(ratings.expectedBags).toEqual([]);
  });

  test('one event: no worth is solid, and the note says what is mixed up', () => {
    const ratings = rate(weighedLog(1));
    expect(ratings.bags[0]!.pegMonths.some(({ evidence }) => evidence === 'solid')).toBe(false);
    expect(ratings.notes).toContainEqual({ about: 'one-event' });
    expect(ratings.backtest).toBeNull();
  });

  test('one session: defined, and thin', () => {
    const { events, sessions } = weighedLog(1);
    const ratings = rate({ events: events!, sessions: sessions!.slice(0, 1) });
    expect(ratings.bags[0]!.pegMonths.every(({ evidence }) => evidence === 'thin')).toBe(true);
  });

  test('one angler: rated, with a note', () => {
    const ratings = rate(weighedLog(20, { angler: 'a-1' }));
    expect(ratings.notes).toContainEqual({ about: 'one-angler' });
  });

  test('no angler known: rated without an angler term', () => {
    const { events, sessions } = weighedLog(20);
    const ratings = rate({ events: events!, sessions: sessions!.map(({ angler: _, ...session }) => session) });
    expect(ratings.bags[0]!.model.sd.angler).toBe(0);
  });

  test('one feature on every peg: at par, wide and thin, with a note', () => {
    const pegs = PEGS.map((peg) => ({ ...peg, features: ['corner'] }));
    const ratings = rate({ ...weighedLog(30), pegs });
    for (const row of ratings.bags[0]!.featureMonths) {
      expect(row.logWorth).toBe(0);
      expect(row.high80 / row.low80).toBeGreaterThan(1.5);
      expect(row.evidence).toBe('thin');
    }
    expect(ratings.notes).toContainEqual({ about: 'feature-everywhere', water: 'The Pit', feature: 'Corner' });
  });

  test('a peg never drawn: thin in every month, and named', () => {
    const { events, sessions } = weighedLog(30);
    const ratings = rate({ events: events!, sessions: sessions!.filter(({ peg }) => peg !== '8') });
    const never = ratings.bags[0]!.pegMonths.filter(({ peg }) => peg === '8');
    expect(never.every(({ evidence, sessions: count }) => evidence === 'thin' && count === 0)).toBe(true);
    expect(ratings.notes).toContainEqual({ about: 'pegs-never-drawn', water: 'The Pit', pegs: ['8'] });
  });

  test('a month never fished: thin there, and named', () => {
    const ratings = rate(weighedLog(30));
    const november = [...ratings.bags[0]!.featureMonths, ...ratings.bags[0]!.pegMonths].filter(
      ({ month }) => month === 11,
    );
    expect(november.length).toBeGreaterThan(0);
    expect(november.every(({ evidence, sessions }) => evidence === 'thin' && sessions === 0)).toBe(true);
    expect(ratings.notes).toContainEqual(
      expect.objectContaining({ about: 'months-never-fished', months: expect.arrayContaining([8, 9, 11]) }),
    );
  });

  test('weights over six orders of magnitude: rated, without a worth beyond belief', () => {
    const chance = seededChance(4);
    const ratings = rate(
      log(30, (event, peg, i) =>
        exampleSession(event.id, peg, 'weighed', 10 ** (6 * chance.uniform()), { angler: `a-${i}` }),
      ),
    );
    for (const row of ratings.bags[0]!.pegMonths) {
      expect(row.worth).toBeGreaterThan(0.01);
      expect(row.worth).toBeLessThan(100);
    }
  });

  test('all weights the same: rated', () => {
    const ratings = rate(log(20, (event, peg) => exampleSession(event.id, peg, 'weighed', 1000)));
    for (const row of ratings.bags[0]!.pegMonths) expect(row.worth).toBeCloseTo(1, 2);
  });

  test('one peg: par itself', () => {
    const { events, sessions } = weighedLog(20);
    const ratings = rate({
      pegs: PEGS.slice(0, 1),
      events: events!,
      sessions: sessions!.filter(({ peg }) => peg === '1'),
    });
    expect(ratings.bags[0]!.pegMonths.every((row) => row.worth === 1)).toBe(true);
  });

  test('no feature in the vocabulary: no table of features, and pegs rated by themselves', () => {
    const settings = { ...EXAMPLE_SETTINGS, features: [] };
    const pegs = PEGS.map((peg) => ({ ...peg, features: [] }));
    const ratings = rate({ ...weighedLog(20), settings, pegs });
    expect(ratings.bags[0]!.featureMonths).toEqual([]);
    expect(ratings.bags[0]!.pegMonths).toHaveLength(96);
  });

  test('a part that nobody ever caught has no tables', () => {
    const ratings = rate(weighedLog(10, { parts: { carp: { weightGrams: 0 } } }));
    expect(ratings.bags.map(({ bag }) => bag)).toEqual(['total']);
  });

  test('six in ten do not weigh: rated, and the lesson says what was learned or why nothing was', () => {
    const chance = seededChance(6);
    const ratings = rate(
      log(60, (event, peg, i) =>
        chance.happens(0.6)
          ? exampleSession(event.id, peg, 'dnw', undefined, { angler: `a-${i}` })
          : exampleSession(event.id, peg, 'weighed', 1000 * Math.exp(1 + 0.5 * chance.normal()), { angler: `a-${i}` }),
      ),
    );
    const { mechanism } = ratings.dnwLesson;
    if (mechanism === null) expect(ratings.dnwLesson).toHaveProperty('why', expect.stringMatching(/\w/));
    else expect(mechanism.blur).toBeGreaterThan(0);
    expect(ratings.withoutDnw!.dnw).toBeGreaterThan(200);
    expect(ratings.fits.every(({ isSettled }) => isSettled)).toBe(true);
  });

  test('a part that no sheet ever gives a weight of has no tables, and no bag promises it', () => {
    const ratings = rate(weighedLog(12, { parts: {} }));
    expect(ratings.bags.map(({ bag }) => bag)).toEqual(['total']);
    expect(ratings.expectedBags.flatMap(({ parts }) => parts)).toEqual([]);
    expect(ratings.framingMakeUp).toEqual([]);
  });

  test('pegs fished alone: no event compares two pegs, so no worth is solid', () => {
    const { events, sessions } = weighedLog(40);
    const alone = events!.map(({ id }, i) => sessions!.filter(({ event }) => event === id)[i % PEGS.length]!);
    const ratings = rate({ events: events!, sessions: alone });
    expect(ratings.bags[0]!.pegMonths.some(({ evidence }) => evidence === 'solid')).toBe(false);
    for (const { chanceToFrame } of ratings.expectedBags) expect(chanceToFrame).toBeLessThanOrEqual(1);
  });

  test('events of two anglers: rated, and everyone frames where there are places for all', () => {
    const { events, sessions } = weighedLog(40);
    const pairs = events!.flatMap(({ id }, i) => {
      const ofEvent = sessions!.filter(({ event }) => event === id);
      return [ofEvent[i % PEGS.length]!, ofEvent[(i + 3) % PEGS.length]!];
    });
    const ratings = rate({ events: events!, sessions: pairs });
    expect(ratings.bags[0]!.pegMonths).toHaveLength(96);
    for (const { chanceToFrame, chanceByDraw } of ratings.expectedBags) {
      expect(chanceToFrame).toBe(1);
      expect(chanceByDraw).toBe(1);
    }
  });
});
