import { describe, expect, test } from 'vitest';
import { featureShares } from '../../src/ratings/feature-shares.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';

const features = ['corner', 'reeds', 'inlet'].map((id) => ({ id, name: id }));
const venue = exampleVenue({
  settings: { ...EXAMPLE_SETTINGS, features },
  pegs: [
    examplePeg('1', { features: ['corner', 'reeds'] }),
    examplePeg('2', { features: ['reeds'] }),
    examplePeg('3', { features: ['reeds'] }),
    examplePeg('4', { features: ['reeds'] }),
    examplePeg('1', { water: 'lake', features: ['corner'] }),
    examplePeg('2', { water: 'lake', features: [] }),
  ],
});

describe('featureShares', () => {
  const shares = featureShares(venue);

  test('lists the features that stand somewhere, in the venue’s order', () => {
    expect(shares.features).toEqual(['corner', 'reeds']);
  });

  test('gives the share of a water’s pegs that have a feature', () => {
    expect(shares.shareOf('pit', 'corner')).toBe(0.25);
    expect(shares.shareOf('lake', 'corner')).toBe(0.5);
    expect(shares.shareOf('lake', 'reeds')).toBe(0);
  });

  test('makes a worth of an effect by the pegs without the feature, averaged as the pegs with it lie', () => {
    // One corner of four pegs (3/4 without) and one of two (1/2 without).
    expect(shares.contrastOf('corner')).toBeCloseTo((0.75 + 0.5) / 2, 12);
  });

  test('leaves no worth to a feature that stands on every peg of its waters', () => {
    expect(shares.contrastOf('reeds')).toBe(0);
  });
});
