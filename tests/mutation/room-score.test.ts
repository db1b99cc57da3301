import { describe, expect, test } from 'vitest';
import { roomScore } from './room-score.ts';

const outcomes = (statuses: readonly (readonly string[])[]) =>
  statuses.flatMap((ofLine, line) => ofLine.map((status) => ({ status, path: 'src/a.ts', line })));

describe('the score of drawn mutants', () => {
  test("gives Wilson's interval where each line holds one", () => {
    // Newcombe, Statistics in Medicine 17 (1998), 857-872, table I, method 3 (values from memory): 81 of 263, 0.2553 to 0.3662.
    const score = roomScore(
      outcomes([...Array.from({ length: 81 }, () => ['Killed']), ...Array.from({ length: 182 }, () => ['Survived'])]),
    );
    expect(score).toMatchObject({ mutants: 263, noticed: 81, lines: 263 });
    expect(score.low).toBeCloseTo(0.2553, 4);
    expect(score.high).toBeCloseTo(0.3662, 4);
  });

  test('tells of an interval also where every mutant was noticed', () => {
    // With none missed of 20 Wilson's lower end is 1 / (1 + z² / 20).
    const { share, low, high } = roomScore(outcomes(Array.from({ length: 20 }, () => ['Killed'])));
    expect(share).toBe(1);
    expect(low).toBeCloseTo(1 / (1 + 1.959964 ** 2 / 20), 6);
    expect(high).toBe(1);
  });

  test('is as unsure as the lines are few, where mutants of a line share its lot', () => {
    const alone = roomScore(outcomes([...Array(30).fill(['Killed']), ...Array(10).fill(['Survived'])]));
    const alike = roomScore(
      outcomes([...Array(30).fill(Array(5).fill('Killed')), ...Array(10).fill(Array(5).fill('Survived'))]),
    );
    expect(alike.share).toBe(alone.share);
    expect(alike.mutants).toBe(5 * alone.mutants);
    expect(alike.low).toBeCloseTo(alone.low, 2);
    expect(alike.high).toBeCloseTo(alone.high, 2);
  });

  test('counts a mutant that no test reaches as missed and an endless loop as noticed, and none that was left out', () => {
    const score = roomScore(
      outcomes([['NoCoverage'], ['Timeout'], ['Ignored', 'CompileError'], ['Survived', 'Killed']]),
    );
    expect(score).toMatchObject({ mutants: 4, noticed: 2, lines: 3, share: 0.5 });
  });
});
