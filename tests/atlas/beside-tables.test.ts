import { describe, expect, test } from 'vitest';
import { besideTables } from '../../src/atlas/beside-tables.ts';
import { besideTestWords } from '../../src/atlas/beside-words.ts';
import { roomWords, windWorths } from '../../src/atlas/day-worths.ts';
import type { BesideWorth } from '../../src/ratings/ratings.ts';
import { sayIn } from '../../src/words/say.ts';
import { EMPTY_RATINGS } from './example-atlas.ts';

const point = (of: BesideWorth['of'], group: string, at: number, worth: number): BesideWorth => ({
  of,
  group,
  at,
  worth,
  low80: worth - 0.1,
  high80: worth + 0.1,
  sessions: 40,
  evidence: 'fair',
});
const besides = [
  point('room', '', 0, 0.9),
  point('room', '', 4, 1.1),
  point('wind', 'up to force 3, April to September', 5, 0.95),
  point('wind', 'up to force 3, April to September', 100, 1.05),
];
const ratings = { ...EMPTY_RATINGS, besides };

describe('besideTables', () => {
  test('has a table for each curve of what earned its place, each row with its interval, picture and evidence', () => {
    const told = besideTables({ ratings });
    expect(told.map(({ heading, tables }) => [heading, tables.map(({ caption }) => caption)])).toEqual([
      ['Room beside a peg', ['Against the average of all']],
      ['Wind along the water', ['Up to force 3, April to September']],
    ]);
    const [row] = told[1]!.tables[0]!.rows;
    expect(row!.value).toBe('5 m');
    expect(row!.known).toMatchObject({ middle: '0.95', low: '0.85', high: '1.05', sessions: 40, evidence: 'fair' });
    expect(row!.drawing).toContain('<svg');
  });

  test('is empty where nothing earned its place', () => {
    expect(besideTables({ ratings: EMPTY_RATINGS })).toEqual([]);
    expect(windWorths(EMPTY_RATINGS)).toBeNull();
    expect(roomWords(EMPTY_RATINGS, sayIn('en'))).toBeNull();
  });
});

test('the bag plan tells room in words, and the phone gets the wind’s curves', () => {
  expect(roomWords(ratings, sayIn('en'))).toBe(
    'Room beside you multiplies these bags: no empty peg 0.90 (0.80 to 1.00); 4 empty pegs 1.10 (1.00 to 1.20). Two pegs a side count; an end peg’s open bank counts as empty.',
  );
  expect(windWorths(ratings)).toEqual({
    'up to force 3, April to September': [
      { fetchMetres: 5, worth: 0.95, low80: 0.85, high80: 1.05 },
      { fetchMetres: 100, worth: 1.05, low80: 0.95, high80: 1.15 },
    ],
  });
});

describe('besideTestWords', () => {
  test('says what earned its place, what did not and what could not be tested, with the figures', () => {
    const figures = { errorWith: 0.7143, errorWithout: 0.7292, gainInErrors: 3.21, asked: 72 };
    expect(besideTestWords({ of: 'wind', ...figures, isEarned: true })).toMatch(
      /^The wind at a peg .* earned its place: .*error 0\.7143 with it, 0\.7292 without, 3\.2 standard errors better; .* 72\.0, where 2\.7 is chance/,
    );
    expect(besideTestWords({ of: 'room', ...figures, gainInErrors: -0.4, isEarned: false })).toMatch(
      /^The room .* did not earn its place .*0\.4 standard errors worse/,
    );
    expect(besideTestWords({ of: 'wind', why: 'no-wind-logged' })).toMatch(
      /could not be tested: no match logs where its wind came from\.$/,
    );
  });
});
