import { describe, expect, it } from 'vitest';
import { pegReturns } from '../../src/atlas/peg-returns.ts';
import type { PegMonth } from '../../src/ratings/ratings.ts';
import { EMPTY_RATINGS, EXAMPLE_MODEL, exampleAtlas } from './example-atlas.ts';

const november: PegMonth = {
  water: 'pit',
  peg: '1',
  month: 11,
  return: 0.8183,
  low80: 0.6552,
  high80: 1.0231,
  sessions: 14,
  evidence: 'fair',
};

const atlasWith = (...pegMonths: readonly PegMonth[]) =>
  exampleAtlas({
    ratings: {
      ...EMPTY_RATINGS,
      bags: [{ bag: 'total', featureMonths: [], pegs: [], pegMonths, model: EXAMPLE_MODEL }],
    },
  });

describe("a peg's return by month", () => {
  it('is said in words with its interval, sessions and evidence', () => {
    const returns = pegReturns(atlasWith(november), 'pit/1');
    expect(returns?.nowMonth).toBe(11);
    const shown = returns?.months[10];
    expect(returns?.axis).toContain('<g class="fair of-month now" data-month="11">');
    expect(shown?.known).toMatchObject({ middle: '0.82', low: '0.66', high: '1.02', sessions: 14, evidence: 'fair' });
    expect(shown?.behind).toBe('14 sessions here in November, evidence fair');
  });

  it('is not known for the other months, and never a middling figure', () => {
    const returns = pegReturns(atlasWith(november), 'pit/1');
    expect(returns?.months.filter(({ known }) => known === null)).toHaveLength(11);
  });

  it('tells its drawing by the ends of the year, since the table beside it has every figure', () => {
    expect(pegReturns(atlasWith(november), 'pit/1')?.year).toContain('by month: November 0.82 par. Choose');
    const august = { ...november, month: 8 as const, return: 1.36 };
    expect(pegReturns(atlasWith(november, august), 'pit/1')?.year).toContain(
      'Return of peg 1 by month: highest August 1.36, lowest November 0.82 par. Choose a month above for its figures.',
    );
  });

  it('is nothing where the log rates nothing here', () => {
    expect(pegReturns(atlasWith({ ...november, peg: '2' }), 'pit/1')).toBeNull();
  });
});
