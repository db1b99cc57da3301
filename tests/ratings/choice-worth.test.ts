import { beforeAll, describe, expect, test } from 'vitest';
import { fitBag } from '../../src/ratings/bag-model.ts';
import { choiceWorths } from '../../src/ratings/choice-worth.ts';
import type { ChoiceWorth } from '../../src/ratings/ratings.ts';
import { seededChance } from '../demo/chance.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

describe('choiceWorths', () => {
  const BAITS = { corn: 0.35, maggot: 0, worm: -0.35 } as const;
  const { venue } = simulateFromModel({ seed: 31, waters: 1, pegs: 20, anglers: 40, events: 70, features: 2 });
  let rows: readonly ChoiceWorth[];
  beforeAll(() => {
    const chance = seededChance(2);
    const sessions = venue.sessions.map((session) => {
      if (chance.happens(0.3)) return session;
      const bait = chance.pick(Object.keys(BAITS) as (keyof typeof BAITS)[]);
      const weightGrams = session.weightGrams! * Math.exp(BAITS[bait]);
      return { ...session, weightGrams, bait, method: 'pole', linesFed: chance.whole(1, 10) };
    });
    const of = { ...venue, sessions };
    rows = choiceWorths(of, fitBag(of, 'total'));
  }, 60_000);
  const bait = (value: string) => rows.find((row) => row.about === 'bait' && row.value === value)!;

  test('finds what each choice was worth beside the others', () => {
    for (const [value, effect] of Object.entries(BAITS)) {
      expect(Math.abs(Math.log(bait(value).worth) - effect)).toBeLessThan(0.12);
    }
    expect(bait('corn').low80).toBeGreaterThan(1);
    expect(bait('worm').high80).toBeLessThan(1);
  });

  test('counts the sessions that tell their choice, and no others', () => {
    const told = rows.filter(({ about }) => about === 'bait').reduce((sum, { sessions }) => sum + sessions, 0);
    expect(told / venue.sessions.length).toBeGreaterThan(0.6);
    expect(told / venue.sessions.length).toBeLessThan(0.8);
  });

  test('has no row for what nobody told, or where all chose alike', () => {
    expect(rows.some(({ about }) => about === 'spot' || about === 'method')).toBe(false);
  });

  test('puts numbers of lines in the order of numbers', () => {
    expect(rows.filter(({ about }) => about === 'lines').map(({ value }) => Number(value))).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8, 9, 10,
    ]);
  });
});
