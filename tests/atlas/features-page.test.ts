import { describe, expect, it } from 'vitest';
import { featureMonthsOfWater } from '../../src/atlas/feature-years.ts';
import { bagsWithFeatures, featuresPage } from '../../src/atlas/features-page.ts';
import type { Evidence, FeatureMonth, Ratings } from '../../src/ratings/ratings.ts';
import { EXAMPLE_SETTINGS, examplePeg } from '../domain/example-venue.ts';
import { EXAMPLE_MODEL, exampleAtlas } from './example-atlas.ts';

const settings = {
  ...EXAMPLE_SETTINGS,
  features: [
    { id: 'corner', name: 'Corner', meaning: 'where two banks meet' },
    { id: 'island', name: 'Island' },
  ],
};

const row = (feature: string, month: number, value: number, evidence: Evidence = 'fair'): FeatureMonth => ({
  feature,
  month: month as FeatureMonth['month'],
  logWorth: Math.log(value),
  sd: 0.1,
  low80: value * 0.88,
  high80: value * 1.14,
  sessions: 40,
  evidence,
});

const bags = (...featureMonths: readonly FeatureMonth[]): Ratings['bags'] => [
  { bag: 'total', featureMonths, pegs: [], pegMonths: [], model: EXAMPLE_MODEL },
  { bag: 'carp', featureMonths: featureMonths.slice(0, 1), pegs: [], pegMonths: [], model: EXAMPLE_MODEL },
];

const atlasWith = (ratings: Partial<Ratings> = {}) =>
  exampleAtlas({
    venue: { settings, pegs: [examplePeg('1', { features: ['island'] })] },
    ratings: { bags: bags(row('corner', 11, 0.8), row('corner', 8, 1.3), row('island', 11, 1.1, 'thin')), ...ratings },
  });

describe('features by month', () => {
  it('ranks the features of a month by their worth', () => {
    const november = featuresPage(atlasWith(), 'total').view.months[10];
    expect(november?.rows.map(({ name, known }) => [name, known.middle, known.evidence])).toEqual([
      ['Island', '1.10', 'thin'],
      ['Corner', '0.80', 'fair'],
    ]);
  });

  it('draws each feature through the year with every figure in words', () => {
    const corner = featuresPage(atlasWith(), 'total').view.years[0];
    expect(corner?.drawing).toContain('August 1.30 (1.14 to 1.48)');
    expect(corner?.drawing).toContain('January not known');
  });

  it('has a page for each part of the bag that the log rates, and for no other', () => {
    expect(bagsWithFeatures(atlasWith()).map(({ id }) => id)).toEqual(['carp']);
    const carp = featuresPage(atlasWith(), 'carp');
    expect(carp.bags).toEqual([
      { name: 'Total bag', href: '/features/', isThis: false },
      { name: 'Carp', href: '/features/carp/', isThis: true },
    ]);
    expect(carp.view.years.map(({ id }) => id)).toEqual(['corner']);
  });

  it('shows on a water the features its pegs have', () => {
    expect(featureMonthsOfWater(atlasWith(), 'pit', 11).years.map(({ id }) => id)).toEqual(['island']);
  });

  it('is empty, not wrong, without a log', () => {
    const page = featuresPage(exampleAtlas(), 'total');
    expect(page.view.years).toEqual([]);
    expect(page.temperatures).toBeNull();
  });
});

describe('features by water temperature', () => {
  const featureTemperatures: Ratings['featureTemperatures'] = [10, 12].map((fromDegreesC) => ({
    feature: 'corner',
    fromDegreesC,
    logWorth: 0,
    sd: 0.1,
    low80: 0.9,
    high80: 1.1,
    sessions: 12,
    evidence: 'fair',
  }));
  const score = (name: 'model' | 'model-by-temperature', rootMeanSquareError: number) => ({
    name,
    rootMeanSquareError,
    rankAgreement: 0.3,
    coverage80: 0.8,
  });
  const backtest = (month: number, temperature: number): Ratings['backtest'] => ({
    events: 10,
    sessions: 200,
    scores: [score('model', month), score('model-by-temperature', temperature)],
    calibration: [],
    besides: [],
    parts: [],
  });
  const verdict = (ratings: Partial<Ratings>) =>
    featuresPage(atlasWith({ featureTemperatures, ...ratings }), 'total').temperatures?.verdict;

  it('says which of month and temperature forecast better', () => {
    expect(verdict({ backtest: backtest(0.62, 0.66) })).toContain('Last year the month forecast better');
    expect(verdict({ backtest: backtest(0.66, 0.62) })).toContain('Last year the water temperature forecast better');
    expect(verdict({ backtest: backtest(0.62, 0.622) })).toContain('neither forecast better');
    expect(verdict({ backtest: null })).toContain('is not known');
  });

  it('marks the band the water stands in', () => {
    const atlas = exampleAtlas({
      venue: {
        settings,
        gauge: [
          { water: 'pit', day: '2026-11-20', waterDegreesC: 11.4 },
          { water: 'pit', day: '2026-10-01', waterDegreesC: 15 },
        ],
      },
      ratings: { bags: bags(row('corner', 11, 0.8)), featureTemperatures },
    });
    const temperatures = featuresPage(atlas, 'total').temperatures;
    expect(temperatures?.readings).toEqual(['The Pit stood at 11.4 °C on 20 Nov 2026']);
    expect(temperatures?.features[0]?.drawing).toMatch(/bar fair now"[^>]*>(?:(?!<g).)*>10<\/text>/);
  });
});

describe('what anglers did and how big the fish are', () => {
  it('keeps choices by water and kind, and sizes by water, part and year', () => {
    const page = featuresPage(
      atlasWith({
        choices: [
          {
            water: 'pit',
            about: 'bait',
            value: 'worm',
            sessions: 30,
            worth: 1.2,
            low80: 1,
            high80: 1.4,
            evidence: 'fair',
          },
        ],
        fishSizes: [2025, 2024].map((year) => ({
          water: 'pit',
          part: 'silvers',
          year,
          fish: 1200,
          meanGrams: 92,
          low80Grams: 85,
          high80Grams: 99,
        })),
      }),
      'total',
    );
    expect(page.choices).toMatchObject([{ water: 'The Pit', about: 'Bait', rows: [{ value: 'worm' }] }]);
    expect(page.sizes[0]?.rows.map(({ year, mean, fish }) => [year, mean, fish])).toEqual([
      [2024, '3 oz 4 dr', '1,200'],
      [2025, '3 oz 4 dr', '1,200'],
    ]);
  });
});
