import { beforeAll, describe, expect, test } from 'vitest';
import { pegKey } from '../../src/domain/peg.ts';
import { fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { expectedBags } from '../../src/ratings/expected-bags.ts';
import type { ExpectedBag } from '../../src/ratings/ratings.ts';
import { pegSum } from '../demo/log/truth.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

describe('expectedBags of a venue drawn from the model', () => {
  const { venue, truth } = simulateFromModel({
    seed: 21,
    pegs: 24,
    anglers: 40,
    events: 80,
    features: 3,
    dnwShare: 0.08,
  });
  const pegs = new Map(venue.pegs.map((peg) => [pegKey(peg.water, peg.peg), peg]));
  // A part that half of the sessions lack: everything below the middle bag counts as none.
  const logged = venue.sessions.map((session) => {
    const grams = session.weightGrams;
    if (grams === undefined) return session;
    return { ...session, parts: { carp: { weightGrams: grams > MIDDLE_GRAMS ? grams : 0 } } };
  });
  let bags: readonly ExpectedBag[];
  beforeAll(() => {
    const of = { ...venue, sessions: logged };
    bags = expectedBags(of, [rateBag(of, fitBag(of, 'total')), rateBag(of, fitBag(of, 'carp'))], 1);
  }, 60_000);

  test('has a row for every peg and month', () => {
    expect(bags).toHaveLength(24 * 12);
  });

  test('lies about what the model would draw for an average rod, no wider and no narrower', () => {
    let [apart, width] = [0, 0];
    for (const { water, peg, month, total } of bags) {
      apart += Math.log(total.middleKg) - (truth.mean + pegSum(truth, pegs.get(pegKey(water, peg))!, month));
      width += Math.log(total.highKg / total.lowKg);
    }
    expect(Math.abs(apart / bags.length)).toBeLessThan(0.25);
    // Quarters of a normal lie 0.6745 sd out on either side; days scatter by 0.7 and bags by 0.6.
    const drawn = 2 * 0.6745 * Math.hypot(0.7, 0.6);
    expect(width / bags.length / drawn).toBeGreaterThan(0.85);
    expect(width / bags.length / drawn).toBeLessThan(1.25);
  });

  test('states for a part how likely there is none, and nothing as its lower quarter where that is likely', () => {
    const chances = bags.map(({ parts }) => parts[0]!.chanceOfNone);
    const mean = chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
    expect(mean).toBeGreaterThan(0.35);
    expect(mean).toBeLessThan(0.65);
    for (const { parts } of bags) {
      const { bag, chanceOfNone } = parts[0]!;
      expect(bag.lowKg === 0).toBe(chanceOfNone > 0.25);
      expect(bag.highKg === 0).toBe(chanceOfNone > 0.75);
      expect(bag.lowKg).toBeLessThanOrEqual(bag.middleKg);
      expect(bag.middleKg).toBeLessThanOrEqual(bag.highKg);
    }
  });

  test('gives better pegs of a water the better chance to frame, and the lottery’s on the average', () => {
    const july = bags.filter(({ water, month }) => water === 'water-1' && month === 7);
    const byBag = [...july].sort((a, b) => a.total.middleKg - b.total.middleKg);
    expect(byBag.at(-1)!.chanceToFrame).toBeGreaterThan(byBag[0]!.chanceToFrame);
    const mean = july.reduce((sum, { chanceToFrame }) => sum + chanceToFrame, 0) / july.length;
    // Of 500 simulated fields: over 200 seeds this mean of nine pegs scattered with a standard deviation of 0.0064; three of them.
    expect(Math.abs(mean - july[0]!.chanceByDraw)).toBeLessThan(0.02);
    expect(july[0]!.chanceByDraw).toBeCloseTo(3 / 9, 12);
  });
});

test('a part that nobody lacked is stated as there: it is told by its weight alone', () => {
  const { venue } = simulateFromModel({ seed: 3, waters: 1, pegs: 10, anglers: 20, events: 30, features: 2 });
  const sessions = venue.sessions.map((session) => ({
    ...session,
    parts: { silvers: { weightGrams: session.weightGrams! / 2 } },
  }));
  const of = { ...venue, sessions };
  const rows = expectedBags(of, [rateBag(of, fitBag(of, 'total')), rateBag(of, fitBag(of, 'silvers'))], 1);
  expect(rows).toHaveLength(10 * 12);
  for (const { parts } of rows) {
    expect(parts[0]!.chanceOfNone).toBeLessThan(0.05);
    expect(parts[0]!.bag.lowKg).toBeGreaterThan(0);
  }
}, 60_000);

const MIDDLE_GRAMS = 1000 * Math.exp(2);
