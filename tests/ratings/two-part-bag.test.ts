import { beforeAll, describe, expect, test } from 'vitest';
import type { Session } from '../../src/domain/session.ts';
import { fitBag, type RatedBag, rateBag } from '../../src/ratings/bag-model.ts';
import { logNormalCdf } from '../../src/ratings/engine/normal-cdf.ts';
import { expectedBags } from '../../src/ratings/expected-bags.ts';
import { interval80 } from '../../src/ratings/interval.ts';
import { correlationOfSides, togetherWorth } from '../../src/ratings/two-part-bag.ts';
import type { WorthEstimate } from '../../src/ratings/worth.ts';
import { seededChance } from '../demo/chance.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

function told(logWorth: number, sd: number, priorSd: number): WorthEstimate {
  return { logWorth, sd, priorSd, ...interval80(logWorth, sd), sessions: 9, evidence: 'fair' };
}

describe('togetherWorth', () => {
  test('is the chance over par’s chance, times the weight over par’s', () => {
    const { logWorth } = togetherWorth(told(0.2, 0.1, 0.3), told(0.5, 0.2, 0.6), { mean: 0, sd: 0, spread: 1 });
    // Φ(0.5) = 0.691462461274, Abramowitz and Stegun, table 26.1.
    expect(logWorth).toBeCloseTo(0.2 + Math.log(0.691462461274013 / 0.5), 9);
  });

  test('has the doubt of the weight alone where there always is some', () => {
    expect(togetherWorth(told(0.2, 0.1, 0.3), told(0.5, 0.2, 0.6), { mean: 9, sd: 0, spread: 1 }).sd).toBeCloseTo(
      0.1,
      9,
    );
  });
});

describe('doubt about par', () => {
  test('widens what differs from par, and par itself not at all', () => {
    const sure = { mean: 0.4, sd: 0, spread: 1.2 };
    const sdOf = (own: number, par: typeof sure) => togetherWorth(told(0, 0.1, 0.3), told(own, 0.2, 0.6), par).sd;
    expect(sdOf(0, { ...sure, sd: 0.3 })).toBeCloseTo(sdOf(0, sure), 12);
    // By the delta method, with the slope of log Φ by differences.
    const slope = (probit: number) =>
      (logNormalCdf((probit + 1e-5) / 1.2) - logNormalCdf((probit - 1e-5) / 1.2)) / 2e-5;
    const added = 0.3 * (slope(1) - slope(0.4));
    expect(sdOf(0.6, { ...sure, sd: 0.3 })).toBeCloseTo(Math.hypot(sdOf(0.6, sure), added), 6);
  });
});

describe('two sides that go together', () => {
  // Pairs drawn from a prior of sd 0.3 and 0.6 with this correlation, each seen with its own noise and shrunk as a fit shrinks it.
  const drawn = (correlation: number) => {
    const chance = seededChance(5);
    const seen = (truth: number, prior: number, noise: number) => {
      const kept = prior ** 2 / (prior ** 2 + noise ** 2);
      return told(kept * (truth + noise * chance.normal()), prior * Math.sqrt(1 - kept), prior);
    };
    return Array.from({ length: 3000 }, () => {
      const [a, b] = [chance.normal(), chance.normal()];
      const truth = { weight: 0.3 * a, presence: 0.6 * (correlation * a + Math.sqrt(1 - correlation ** 2) * b) };
      return { truth, weight: seen(truth.weight, 0.3, 0.3), presence: seen(truth.presence, 0.6, 0.4) };
    });
  };
  const sidesOf = (pairs: ReturnType<typeof drawn>) =>
    correlationOfSides(
      pairs.map(({ weight }) => weight),
      pairs.map(({ presence }) => presence),
    );

  test.each([0, 0.5, 0.9])('are found to: %d', (correlation) => {
    expect(Math.abs(sidesOf(drawn(correlation)) - correlation)).toBeLessThan(0.08);
  });

  test('have intervals that hold four in five, which two sides taken for strangers have not', () => {
    const pairs = drawn(0.9);
    const par = { mean: 0, sd: 0, spread: 1.2 };
    const covered = (correlation: number) => {
      const inside = pairs.filter(({ truth, weight, presence }) => {
        const log = (probit: number) => logNormalCdf(probit / par.spread);
        const value = truth.weight + log(truth.presence) - log(0);
        const { low80, high80 } = togetherWorth(weight, presence, par, correlation);
        return Math.exp(value) >= low80 && Math.exp(value) <= high80;
      });
      return inside.length / pairs.length;
    };
    expect(Math.abs(covered(sidesOf(pairs)) - 0.8)).toBeLessThan(0.03);
    expect(covered(0)).toBeLessThan(0.76);
  });

  test('have nothing to say of each other where nothing was seen', () => {
    expect(correlationOfSides([told(0, 0.3, 0.3)], [told(0.2, 0.1, 0.6)])).toBe(0);
  });

  test('are believed to go together as far as what was seen bears it: the same pairs say more the more of them there are', () => {
    const pairs = drawn(0.9);
    const [few, some, many] = [12, 100, 3000].map((count) => sidesOf(pairs.slice(0, count)));
    expect(few).toBeLessThan(some!);
    expect(some).toBeLessThan(many!);
    // The prior of the correlation has its bulk within a half.
    expect(few).toBeLessThan(0.5);
  });
});

describe('a part that is there or not, and weighs one fish or more where it is', () => {
  const { venue } = simulateFromModel({ seed: 8, waters: 1, pegs: 20, anglers: 40, events: 70, features: 2 });
  const chance = seededChance(77);
  // Pegs 1 to 10 have carp four times in five and pegs 11 to 20 one time in four; what they weigh is the same.
  const sessions = venue.sessions.map((session): Session => {
    const isThere = chance.happens(Number(session.peg) <= 10 ? 0.8 : 0.25);
    return { ...session, parts: { carp: { weightGrams: isThere ? 2000 * Math.exp(0.4 * chance.normal()) : 0 } } };
  });
  const of = { ...venue, sessions };
  let carp: RatedBag;
  beforeAll(() => {
    carp = rateBag(of, fitBag(of, 'carp'));
  }, 60_000);

  test('is told in two', () => {
    expect(carp.presence).not.toBeNull();
    expect(carp.fitted.sessions.every(({ isCensored }) => !isCensored)).toBe(true);
  });

  test('chances of none are those it was drawn with', () => {
    const bags = expectedBags(of, [rateBag(of, fitBag(of, 'total')), carp], 1);
    const mean = (isGood: boolean) => {
      const rows = bags.filter(({ peg }) => Number(peg) <= 10 === isGood);
      return rows.reduce((sum, { parts }) => sum + parts[0]!.chanceOfNone, 0) / rows.length;
    };
    expect(Math.abs(mean(true) - 0.2)).toBeLessThan(0.05);
    expect(Math.abs(mean(false) - 0.75)).toBeLessThan(0.05);
  });

  test('good pegs are worth what more of the chances makes of them', () => {
    const mean = (isGood: boolean) => {
      const rows = carp.pegs.filter(({ peg }) => Number(peg) <= 10 === isGood);
      return rows.reduce((sum, { logWorth }) => sum + logWorth, 0) / rows.length;
    };
    expect(Math.abs(mean(true) - mean(false) - Math.log(0.8 / 0.25))).toBeLessThan(0.25);
  });

  test('a part that is never missing is told by one model', () => {
    const always = {
      ...venue,
      sessions: venue.sessions.map((session): Session => ({ ...session, parts: { carp: { weightGrams: 900 } } })),
    };
    expect(fitBag(always, 'carp', {}, { variances: 'mode' }).presence).toBeNull();
  });
});
