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

  test('is thin where nothing could be learned', () => {
    expect(evidenceOf(0, 0)).toBe('thin');
    expect(evidenceOf(0.2, 0)).toBe('thin');
  });
});
