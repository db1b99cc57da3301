import { describe, expect, it } from 'vitest';
import { expectedGrams, expectedWeight, expectedWhole } from '../../src/atlas/expected-weight.ts';

const pounds = (value: number) => value * 0.45359237;

describe('a weight that is expected', () => {
  it('has a coarser step the heavier it is', () => {
    const words = [0, 0.3, 1.9, 7.3, 11.1, 27.6].map((weight) => expectedWeight(pounds(weight), 'lb'));
    expect(words).toEqual(['0', '5 oz', '2 lb', '7 lb 8 oz', '11 lb', '28 lb']);
  });

  it('carries ounces into pounds', () => {
    expect(expectedWeight(pounds(4.99), 'lb')).toBe('5 lb');
    expect(expectedWeight(pounds(0.99), 'lb')).toBe('1 lb');
  });

  it('does the same in kilograms', () => {
    const words = [0, 0.123, 1.26, 9.04, 12.3, 31.6].map((weight) => expectedWeight(weight, 'kg'));
    expect(words).toEqual(['0', '120 g', '1.3 kg', '9 kg', '12.5 kg', '32 kg']);
  });

  it('is the same weight where it is reckoned with', () => {
    for (const weight of [0, 0.123, 0.3, 1.26, 9.04, 10.83, 23.875]) {
      for (const unit of ['lb', 'kg'] as const) {
        expect(expectedWeight(expectedGrams(weight, unit) / 1000, unit)).toBe(expectedWeight(weight, unit));
      }
    }
    expect(expectedGrams(pounds(23.875), 'lb')).toBe(Math.round(pounds(24) * 1000));
  });

  it('is a bare number under a drawing, halves only while it is small', () => {
    expect([2.3, 9.4, 41.6].map((weight) => expectedWhole(weight, 'kg'))).toEqual(['2.5', '9.5', '42']);
  });
});
