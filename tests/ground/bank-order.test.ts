import { expect, test } from 'vitest';
import { bankRings, keptOnRing, openedAtWidestGap } from '../../src/ground/bank-order.ts';
import type { Neighbour } from '../../src/ground/survey.ts';

/** Pegs 1 to 4 round a pond, each to the right of the one before, and one alone on an island. */
const GAPS: Readonly<Record<string, readonly [string, number]>> = {
  1: ['2', 10],
  2: ['3', 30],
  3: ['4', 8],
  4: ['1', 12],
};
const neighboursOf = (peg: string): readonly Neighbour[] => {
  const right = GAPS[peg];
  return right === undefined ? [] : [{ peg: right[0], side: 'right', gapMetres: right[1] }];
};

test('follows each line of bank to the right, once round', () => {
  expect(bankRings(['1', '2', '3', '4', 'island'], neighboursOf)).toEqual([
    { pegs: ['1', '2', '3', '4'], gapMetres: [10, 30, 8, 12] },
    { pegs: ['island'], gapMetres: [Number.POSITIVE_INFINITY] },
  ]);
});

test('runs the gaps past pegs that are left out', () => {
  const [ring] = bankRings(['1', '2', '3', '4'], neighboursOf);
  expect(keptOnRing(ring!, (peg) => peg !== '3')).toEqual({ pegs: ['1', '2', '4'], gapMetres: [10, 38, 12] });
  expect(keptOnRing(ring!, (peg) => peg === '3')).toEqual({ pegs: ['3'], gapMetres: [60] });
  expect(keptOnRing(ring!, () => false)).toEqual({ pegs: [], gapMetres: [] });
});

test('opens a ring where its pegs lie farthest apart', () => {
  const [ring] = bankRings(['1', '2', '3', '4'], neighboursOf);
  expect(openedAtWidestGap(ring!)).toEqual({ pegs: ['3', '4', '1', '2'], gapMetres: [8, 12, 10, 30] });
});
