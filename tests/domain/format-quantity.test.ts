import { describe, expect, it } from 'vitest';
import {
  compassWords,
  formatDistance,
  formatLength,
  formatPosition,
  formatWeight,
} from '../../src/domain/format-quantity.ts';

describe('formatWeight', () => {
  it('calls pounds and ounces as the scales do', () => {
    // 1 lb = 0.45359237 kg (international yard and pound agreement, 1959).
    expect(formatWeight(27 * 0.45359237 + 10 * 0.028349523125, 'lb')).toBe('27 lb 10 oz');
    expect(formatWeight(8 * 0.45359237, 'lb')).toBe('8 lb');
    expect(formatWeight(0.34, 'lb')).toBe('12 oz');
    expect(formatWeight(0, 'lb')).toBe('0');
  });

  it('carries sixteen ounces into the next pound', () => {
    expect(formatWeight(0.4535, 'lb')).toBe('1 lb');
  });

  it('gives kilograms to ten grams, from ten kilograms on to a hundred', () => {
    expect(formatWeight(9.876, 'kg')).toBe('9.88 kg');
    expect(formatWeight(12.34, 'kg')).toBe('12.3 kg');
  });
});

describe('formatLength', () => {
  it('gives centimetres or inches, and carries twelve inches into the next foot', () => {
    expect(formatLength(1.424, 'm')).toBe('1.42 m');
    expect(formatLength(1.424, 'ft')).toBe('4 ft 8 in');
    expect(formatLength(0.3, 'ft')).toBe('1 ft');
    expect(formatLength(0.1, 'ft')).toBe('4 in');
    expect(formatLength(-0.0254, 'ft')).toBe('−1 in');
  });
});

it('formatDistance rounds to whole metres or feet', () => {
  expect(formatDistance(139.6, 'm')).toBe('140 m');
  expect(formatDistance(30.48, 'ft')).toBe('100 ft');
});

it('compassWords takes the nearest of eight points, either side of north', () => {
  expect(compassWords(48)).toBe('north-east');
  expect(compassWords(350)).toBe('north');
  expect(compassWords(-90)).toBe('west');
});

it('formatPosition gives five places and a true minus sign', () => {
  expect(formatPosition({ lat: 52.751262, lng: -0.054814 })).toBe('52.75126, −0.05481');
});
