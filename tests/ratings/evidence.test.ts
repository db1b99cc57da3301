import { describe, expect, test } from 'vitest';
import { evidenceOf } from '../../src/ratings/evidence.ts';

describe('evidenceOf', () => {
  test.each([
    [0.3, 0.3, 'thin'],
    [0.22, 0.3, 'thin'],
    [0.2, 0.3, 'fair'],
    [0.16, 0.3, 'fair'],
    [0.14, 0.3, 'solid'],
  ] as const)('of a doubt of %f left of %f is %s', (left, before, word) => {
    expect(evidenceOf(left, before)).toBe(word);
  });

  // Of the variance: 1 − 0.7072² is less than half removed, 1 − 0.4999² more than three quarters.
  test.each([
    [0.7072, 'thin'],
    [0.7069, 'fair'],
    [0.5001, 'fair'],
    [0.4999, 'solid'],
  ] as const)('changes its word at half and at three quarters of the variance removed: %f is %s', (left, word) => {
    expect(evidenceOf(left, 1)).toBe(word);
  });

  test('is thin where nothing could be learned', () => {
    expect(evidenceOf(0, 0)).toBe('thin');
    expect(evidenceOf(0.2, 0)).toBe('thin');
  });
});
