import { describe, expect, it } from 'vitest';
import { bankPieces } from '../../src/atlas/bank-pieces.ts';
import { pegKey } from '../../src/domain/peg.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { EXAMPLE_PEG_SURVEY, exampleAtlas } from './example-atlas.ts';

/** Pegs in a row along the bank; with `isRing` the last leads on to the first. */
function piecesOf(names: readonly string[], isRing: boolean, closed: readonly string[] = []) {
  const pegs = names.map((peg) =>
    examplePeg(peg, closed.includes(peg) ? { status: 'closed', statusReason: 'Works.' } : {}),
  );
  const surveys = Object.fromEntries(
    names.map((peg, i) => {
      const right = names[i + 1] ?? (isRing && names.length > 1 ? names[0] : undefined);
      const neighbours =
        right === undefined ? [] : [{ peg: pegKey('pit', right), side: 'right' as const, gapMetres: 10 + i }];
      return [pegKey('pit', peg), { ...EXAMPLE_PEG_SURVEY, neighbours }];
    }),
  );
  const atlas = exampleAtlas({ venue: { pegs } });
  return bankPieces({ ...atlas, survey: { ...atlas.survey, pegs: surveys } }, 'pit');
}

/** Which pegs a piece links to, from left to right, as their links are named, without the ways to them. */
function besideOf(svg: string): readonly string[] {
  return [...svg.matchAll(/<a class="b-peg[^>]*transform="translate\((\d+)\)">(.*?)<\/a>/g)]
    .sort(([, a], [, b]) => Number(a) - Number(b))
    .map(([, , inside]) =>
      inside!
        .replaceAll(/<[^>]+>/g, '')
        .replace(/ \d+ m$/, '')
        .trim(),
    );
}

const EIGHT = ['1', '2', '3', '4', '5', '6', '7', '8'];

describe('bankPieces', () => {
  it('takes the two pegs to either side, past the end of the list where the bank runs round', () => {
    expect(besideOf(piecesOf(EIGHT, true)(pegKey('pit', '1')))).toEqual(['7', '8', '2', '3']);
  });

  it('writes the way to each of the next, as the bank goes', () => {
    const svg = piecesOf(EIGHT, true)(pegKey('pit', '4'));
    expect([...svg.matchAll(/>(\d+ m)</g)].map(([, words]) => words)).toEqual(['12 m', '13 m']);
  });

  it('ends where the bank ends', () => {
    expect(besideOf(piecesOf(EIGHT, false)(pegKey('pit', '1')))).toEqual(['2', '3']);
  });

  it.each([
    [1, []],
    [2, ['2']],
    [3, ['3', '2']],
    [4, ['4', '2', '3']],
  ])('names each peg of an island of %d once', (count, beside) => {
    expect(besideOf(piecesOf(EIGHT.slice(0, count), true)(pegKey('pit', '1')))).toEqual(beside);
  });

  it('says that a neighbour is closed', () => {
    expect(besideOf(piecesOf(EIGHT, true, ['3'])(pegKey('pit', '2')))).toContain('3 closed');
  });

  it('refuses a peg of another water', () => {
    expect(() => piecesOf(EIGHT, true)(pegKey('mere', '1'))).toThrow('mere/1 is no peg of pit');
  });
});
