import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Venue } from '../../src/domain/venue.ts';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import type { BagTables } from '../../src/ratings/ratings.ts';
import { seededChance } from '../demo/chance.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

const { venue } = simulateFromModel({
  seed: 8,
  pegs: 16,
  anglers: 20,
  events: 24,
  features: 3,
  dnwShare: 0.1,
  frameOnlyShare: 0.1,
});

function tablesOf(of: Venue): BagTables {
  return bagTables(rateBag(of, fitBag(of, 'total')));
}

/** Worth of pegs in every month, by their names. */
function worthsByPeg(tables: BagTables, nameOf: (peg: string) => string): ReadonlyMap<string, readonly number[]> {
  return new Map(
    tables.pegMonths.map((row) => [
      `${row.water} ${nameOf(row.peg)} ${row.month}`,
      [Math.log(row.worth), Math.log(row.low80), Math.log(row.high80)],
    ]),
  );
}

function expectSame(found: BagTables, expected: BagTables, nameOf: (peg: string) => string = (peg) => peg): void {
  const [a, b] = [worthsByPeg(found, nameOf), worthsByPeg(expected, (peg) => peg)];
  expect([...a.keys()].sort()).toEqual([...b.keys()].sort());
  for (const [key, values] of b) {
    values.forEach((value, i) => {
      expect(Math.abs(a.get(key)![i]! - value), key).toBeLessThan(1e-5);
    });
  }
  found.featureMonths.forEach((row, i) => {
    expect(Math.abs(row.logWorth - expected.featureMonths[i]!.logWorth)).toBeLessThan(1e-5);
    expect(Math.abs(row.sd - expected.featureMonths[i]!.sd)).toBeLessThan(1e-5);
  });
}

describe('the same log told otherwise', () => {
  const tables = tablesOf(venue);

  test('gives the same bytes when its sessions and events are shuffled', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const chance = seededChance(seed);
        const shuffled = {
          ...venue,
          events: chance.shuffled(venue.events),
          sessions: chance.shuffled(venue.sessions),
        };
        expect(tablesOf(shuffled)).toEqual(tables);
      }),
      { numRuns: 3 },
    );
  });

  test('gives the same worth, but for rounding, when its pegs are renamed', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const names = [...new Set(venue.pegs.map(({ peg }) => peg))];
        const others = seededChance(seed).shuffled(names.map((_, i) => `p${i}`));
        const rename = new Map(names.map((name, i) => [name, others[i]!]));
        const back = new Map(names.map((name, i) => [others[i]!, name]));
        const renamed = {
          ...venue,
          pegs: venue.pegs.map((peg) => ({ ...peg, peg: rename.get(peg.peg)! })),
          sessions: venue.sessions.map((session) => ({ ...session, peg: rename.get(session.peg)! })),
        };
        expectSame(tablesOf(renamed), tables, (peg) => back.get(peg)!);
      }),
      { numRuns: 3 },
    );
  });

  test('gives the same worth, but for rounding, when every bag is weighed in other units', () => {
    const settings = {
      ...venue.settings,
      ratingRules: {
        ...venue.settings.ratingRules,
        scaleDivisionGrams: 2 * venue.settings.ratingRules.scaleDivisionGrams,
      },
    };
    const sessions = venue.sessions.map((session) =>
      session.weightGrams === undefined ? session : { ...session, weightGrams: 2 * session.weightGrams },
    );
    expectSame(tablesOf({ ...venue, settings, sessions }), tables);
  });

  test('gives the same bytes when rated again', () => {
    expect(JSON.stringify(rateVenue(venue, { seed: 3 }))).toBe(JSON.stringify(rateVenue(venue, { seed: 3 })));
  });
});
