import { describe, expect, test } from 'vitest';
import type { LinearCombination } from '../../src/ratings/engine/latent-model.ts';
import { ratingModel } from '../../src/ratings/rating-model.ts';
import { MONTH_SEASON } from '../../src/ratings/temperature-season.ts';
import { worthCombinations } from '../../src/ratings/worth-combinations.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';

const venue = exampleVenue({
  settings: { ...EXAMPLE_SETTINGS, features: ['corner', 'reeds'].map((id) => ({ id, name: id })) },
  pegs: [
    examplePeg('1', { features: ['corner', 'reeds'] }),
    examplePeg('2', { features: ['reeds'] }),
    examplePeg('3'),
    examplePeg('4'),
  ],
});
const { ofPeg, ofFeature } = worthCombinations(venue, ratingModel(venue, [], MONTH_SEASON));
const [first, second] = venue.pegs as [(typeof venue.pegs)[0], (typeof venue.pegs)[0]];

/** Net weight of each effect, without those that cancel. */
function net(combination: LinearCombination): Record<string, number> {
  const weights: Record<string, number> = {};
  const add = ({ effects, minus }: LinearCombination, sign: number) => {
    for (const { term, column, weight } of effects) {
      const key = `${term} ${column}`;
      weights[key] = (weights[key] ?? 0) + sign * weight;
    }
    if (minus !== undefined) add(minus, -sign);
  };
  add(combination, 1);
  // cos 90° is not quite nothing in a double.
  return Object.fromEntries(
    Object.entries(weights).map(([key, weight]) => [key, Math.abs(weight) < 1e-15 ? 0 : Number(weight.toFixed(12))]),
  );
}

describe('worthCombinations', () => {
  test('a peg’s worth is its sum less the mean over its water’s pegs', () => {
    expect(net(ofPeg(second, 6))).toEqual({
      'peg 0': -0.25,
      'peg 1': 0.75,
      'peg 2': -0.25,
      'peg 3': -0.25,
      'feature 0': -0.25,
      'featureMonth 6': -0.25,
      'feature 1': 0.5,
      'featureMonth 18': 0.5,
      // July stands opposite January on the wave.
      'featureWave 0': 0.25,
      'featureWave 1': 0,
      'featureWave 2': -0.5,
      'featureWave 3': 0,
    });
  });

  test('worths of a water’s pegs add up to nothing', () => {
    const total: Record<string, number> = {};
    for (const peg of venue.pegs) {
      for (const [key, weight] of Object.entries(net(ofPeg(peg, 3)))) total[key] = (total[key] ?? 0) + weight;
    }
    for (const weight of Object.values(total)) expect(weight).toBeCloseTo(0, 14);
  });

  test('a yearly worth has no season in it', () => {
    expect(Object.keys(net(ofPeg(first, null))).filter((key) => key.startsWith('featureMonth'))).toEqual([]);
  });

  test('a feature’s worth is its effect times the share of pegs without it', () => {
    expect(net(ofFeature('corner', 11))).toEqual({
      'feature 0': 0.75,
      'featureMonth 11': 0.75,
      'featureWave 0': Number((0.75 * Math.cos(Math.PI / 6)).toFixed(12)),
      'featureWave 1': -0.375,
    });
    expect(net(ofFeature('reeds', 0))).toEqual({
      'feature 1': 0.5,
      'featureMonth 12': 0.5,
      'featureWave 2': 0.5,
      'featureWave 3': 0,
    });
  });

  test('pegs of a water in a month are compared with one shared mean', () => {
    expect(ofPeg(first, 2).minus).toBe(ofPeg(second, 2).minus);
    expect(ofPeg(first, 2).minus).not.toBe(ofPeg(first, 3).minus);
  });
});
