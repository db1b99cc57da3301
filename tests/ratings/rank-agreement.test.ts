import { describe, expect, test } from 'vitest';
import { rankAgreement } from '../../src/ratings/rank-agreement.ts';

describe('rankAgreement', () => {
  test('is 1 for the same order and −1 for the opposite one', () => {
    expect(rankAgreement([1, 5, 9], [0.1, 0.2, 40])).toBeCloseTo(1, 14);
    expect(rankAgreement([1, 5, 9], [3, 2, 1])).toBeCloseTo(-1, 14);
  });

  test('without ties is 1 − 6 Σd² / (n (n² − 1)) (Spearman, 1904)', () => {
    const [a, b] = [
      [106, 100, 86, 101, 99, 103, 97, 113, 112, 110],
      [7, 27, 2, 50, 28, 29, 20, 12, 6, 17],
    ];
    // Squared rank differences sum to 194.
    expect(rankAgreement(a, b)).toBeCloseTo(1 - (6 * 194) / (10 * 99), 12);
  });

  test('puts ties at their middle rank', () => {
    // By hand: ranks about their mean −1.5, 0, 0, 1.5 and −1.5, 0.5, −0.5, 1.5, so 4.5 / √(4.5 × 5).
    expect(rankAgreement([1, 2, 2, 4], [1, 3, 2, 4])).toBeCloseTo(0.9486832980505138, 12);
  });

  test('is 0 where one side ranks nothing', () => {
    expect(rankAgreement([1, 2, 3], [0, 0, 0])).toBe(0);
  });
});
