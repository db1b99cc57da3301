import { describe, expect, it } from 'vitest';
import { worthByMonth } from '../../src/atlas/worth-by-month.ts';
import type { PegMonth } from '../../src/ratings/ratings.ts';
import { EMPTY_RATINGS, EXAMPLE_MODEL, exampleAtlas } from './example-atlas.ts';

const november: PegMonth = {
  water: 'pit',
  peg: '1',
  month: 11,
  worth: 0.8183,
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

describe("a peg's worth by month", () => {
  it('is said in words with its interval, sessions and evidence', () => {
    const worths = worthByMonth(atlasWith(november), 'pit/1');
    expect(worths?.nowMonth).toBe(11);
    const shown = worths?.months[10];
    expect(worths?.axis).toContain('<g class="fair of-month now" data-month="11">');
    expect(shown?.known).toMatchObject({ middle: '0.82', low: '0.66', high: '1.02', sessions: 14, evidence: 'fair' });
    expect(shown?.behind).toBe('14 sessions here in November, evidence fair');
  });

  it('is not known for the other months, and never a middling figure', () => {
    const worths = worthByMonth(atlasWith(november), 'pit/1');
    expect(worths?.months.filter(({ known }) => known === null)).toHaveLength(11);
  });

  it('tells its drawing by the ends of the year, since the table beside it has every figure', () => {
    expect(worthByMonth(atlasWith(november), 'pit/1')?.year).toContain('by month: November 0.82 par. Choose');
    const august = { ...november, month: 8 as const, worth: 1.36 };
    expect(worthByMonth(atlasWith(november, august), 'pit/1')?.year).toContain(
      'Worth of peg 1 by month: highest August 1.36, lowest November 0.82 par. Choose a month above for its figures.',
    );
  });

  it('is nothing where the log rates nothing here', () => {
    expect(worthByMonth(atlasWith({ ...november, peg: '2' }), 'pit/1')).toBeNull();
  });
});
