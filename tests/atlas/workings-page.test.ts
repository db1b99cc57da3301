import { describe, expect, it } from 'vitest';
import { backtestView } from '../../src/atlas/backtest-view.ts';
import { sizeOfPartsWords, varianceComponents } from '../../src/atlas/variance-components.ts';
import { dnwLessonWords, workingsPage } from '../../src/atlas/workings-page.ts';
import type { Session } from '../../src/domain/session.ts';
import type { Backtest } from '../../src/ratings/ratings.ts';
import { EXAMPLE_SETTINGS } from '../domain/example-venue.ts';
import { EMPTY_RATINGS, EXAMPLE_MODEL, EXAMPLE_WATER_SURVEY, exampleAtlas } from './example-atlas.ts';

const session = (status: Session['status']): Session => ({ event: 'e1', water: 'pit', peg: '1', status, parts: {} });

describe('what went in and what was left out', () => {
  const page = workingsPage(
    exampleAtlas({
      venue: {
        sessions: [session('weighed'), session('weighed'), session('dnw'), session('absent')],
        events: ['2026-03-01', '2024-05-02'].map((day) => ({
          id: day,
          day,
          water: 'pit',
          kind: 'match' as const,
          hours: 5,
          listing: 'full' as const,
          framePlaces: 4,
          conditions: {},
        })),
      },
      ratings: {
        leftOut: [
          { why: 'chosen', sessions: 7 },
          { why: 'absent', sessions: 1 },
        ],
        withoutDnw: { residualSd: { with: 0.6, without: 0.58 }, largestChange: 0.123, dnw: 1 },
        notes: [{ about: 'feature-nowhere', feature: 'Margin' }],
      },
    }),
  );

  it('counts the log by state and says how each counts, leaving out states that do not occur', () => {
    expect(page.wentIn.map(({ what, count }) => [what, count])).toEqual([
      ['Weighed', '2'],
      ['Did not weigh (DNW)', '1'],
      ['Absent', '1'],
      ['All sessions in the log', '4'],
      ['Of these the ratings use', '1,000'],
    ]);
    expect(page.span).toBe('2 events from 2 May 2024 to 1 Mar 2026');
  });

  it('says why sessions were left out, with their number', () => {
    expect(page.leftOut.map(({ what, count }) => [what, count])).toEqual([
      ['peg chosen, not drawn', '7'],
      ['absent', '1'],
    ]);
    expect(page.leftOut.every(({ note }) => note !== '')).toBe(true);
    expect(page.leftOutTotal).toBe('8 sessions');
    expect(page.isChosenLeftOut).toBe(true);
  });

  it('says what the assumption about DNWs changes', () => {
    expect(page.dnwWords[0]).toContain('cannot be learned from this log');
    expect(page.dnwWords[1]).toBe(
      'Without the 1 session that did not weigh, no fair or solid worth moves by more than 0.12 par.',
    );
    expect(page.dnwWords[2]).toBe(
      'With them two bags of three lie within a factor of 1.82 of what was expected, without them within 1.79.',
    );
  });

  it('passes on what cannot be told apart', () => {
    expect(page.notes).toEqual(['No peg has the feature “Margin”: it has no worth.']);
  });

  it('says so where a venue counts chosen pegs, and where nobody failed to weigh', () => {
    const settings = { ...EXAMPLE_SETTINGS, ratingRules: { ...EXAMPLE_SETTINGS.ratingRules, countChosenPegs: true } };
    const other = workingsPage(exampleAtlas({ venue: { settings } }));
    expect(other.isChosenLeftOut).toBe(false);
    expect(other.dnwWords).toEqual(['Everyone who fished weighed in, so nothing had to be assumed here.']);
    expect(other.span).toBe('no event yet');
  });
});

describe('how much each part matters', () => {
  it('turns standard deviations of the log into factors', () => {
    const rows = varianceComponents(EMPTY_RATINGS.bags);
    expect(rows.map(({ name, swings }) => [name, swings[0]])).toEqual([
      ['The day', '2.23'],
      ['The angler', '1.28'],
      ['The peg itself', '1.16'],
      ['A feature', '1.05'],
      ['A feature in its month', '1.22'],
      ['All the rest', '1.82'],
    ]);
  });

  it('says in plain words which matters more, peg and features taken together', () => {
    const [day, angler] = sizeOfPartsWords(EXAMPLE_MODEL);
    expect(day).toBe(
      'The day matters more than the peg: a usual swing is times or divided by 2.23 for the day, 1.29 for the peg with its features.',
    );
    expect(angler).toContain('The angler matters about as much as the peg');
  });

  it('says nothing of a part the model does not have', () => {
    const sd = { ...EXAMPLE_MODEL.sd, event: 0, angler: 0 };
    expect(sizeOfPartsWords({ ...EXAMPLE_MODEL, sd })).toHaveLength(1);
    expect(
      varianceComponents([{ ...EMPTY_RATINGS.bags[0]!, model: { ...EXAMPLE_MODEL, sd } }]).map(({ name }) => name),
    ).not.toContain('The day');
  });

  it('does not pass an assumption for a finding where no bag was weighed', () => {
    for (const number of [0, 5]) {
      const words = sizeOfPartsWords({ ...EXAMPLE_MODEL, sessions: number, censored: number });
      expect(words).toEqual([expect.stringContaining('assumed before the log')]);
    }
  });
});

describe('the back-test', () => {
  const backtest = (model: number, flat: number, raw: number): Backtest => ({
    events: 34,
    sessions: 1832,
    scores: [
      { name: 'model', rootMeanSquareError: model, rankAgreement: 0.345, coverage80: 0.816 },
      { name: 'flat', rootMeanSquareError: flat, rankAgreement: 0, coverage80: null },
      { name: 'peg-average', rootMeanSquareError: raw, rankAgreement: 0.15, coverage80: null },
    ],
    calibration: [{ stated: 0.5, happened: 0.48 }],
    besides: [],
    parts: [],
  });

  it('shows its scores with the error as a factor, and says where a guess states no interval', () => {
    const view = backtestView(backtest(0.626, 0.681, 0.677));
    expect(view.of).toBe('34 events and 1,832 bags');
    expect(view.rows[0]).toMatchObject({
      name: 'This guide',
      error: '0.626',
      factor: '1.87',
      rank: '0.34',
      coverage: '82%',
    });
    expect(view.rows[1]?.coverage).toBe('gives none');
    expect(view.coverageWords).toBe('Of ten bags 8.2 lay inside the interval that should hold 8.');
    expect(view.drawing).toContain('stated 50%, happened 48%');
  });

  it('admits it where the guide is no better', () => {
    expect(backtestView(backtest(0.6, 0.7, 0.65)).verdict).toContain(
      'better than the flat guess and the raw peg average.',
    );
    expect(backtestView(backtest(0.68, 0.7, 0.65)).verdict).toContain('but not than the raw peg average');
    expect(backtestView(backtest(0.7, 0.7, 0.65)).verdict).toContain('no better than');
  });
});

describe('what the depths rest on', () => {
  it('counts soundings used and not used', () => {
    const depth = {
      meanMetres: 1.8,
      maximumMetres: 3.4,
      volumeCubicMetres: 22_345,
      soundings: 1400,
      uncorrected: 12,
      plumbedShare: 0.874,
      unused: [{ why: 'outside' as const, soundings: 3 }],
      isobaths: [],
    };
    const [pit] = workingsPage(exampleAtlas({ water: { ...EXAMPLE_WATER_SURVEY, depth } })).depths;
    expect(pit?.plumbed).toEqual({
      soundings: '1,400',
      share: '87%',
      mean: '1.80 m',
      maximum: '3.40 m',
      volume: '22,345 m³',
      notes: ['12 without a level at that time: taken as if at datum', '3 not used: outside the outline'],
    });
  });

  it('says not plumbed for a water without soundings', () => {
    expect(workingsPage(exampleAtlas()).depths).toEqual([{ water: 'The Pit', plumbed: null }]);
  });
});

describe('dnwLessonWords', () => {
  it('tells what the log taught as a share of the middle bag', () => {
    // Φ(-1) is 0.1587 (any table of the normal distribution).
    expect(dnwLessonWords({ mechanism: { shift: Math.log(0.25), blur: Math.log(4) }, gain: 9 })).toBe(
      'How low was learned from this log: with 0.25 of the event’s middle bag one angler in two goes home without weighing, with the middle bag itself 16 in 100.',
    );
  });

  it('says why nothing was learned, and that an assumption stands', () => {
    expect(dnwLessonWords({ mechanism: null, why: 'few-dnw', count: 3 })).toContain(
      '(only 3 DNWs in events that list every weight)',
    );
  });
});
