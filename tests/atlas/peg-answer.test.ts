import { describe, expect, it } from 'vitest';
import { pegAnswer } from '../../src/atlas/peg-answer.ts';
import { pegSheet } from '../../src/atlas/peg-sheet.ts';
import { evidenceWords, parWords } from '../../src/atlas/worth-words.ts';
import type { WindAtPeg } from '../../src/ground/survey.ts';
import { inEnglish } from '../../src/words/say.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const face = (from: string, fromDegrees: number): WindAtPeg => ({ from, fromDegrees, meets: 'face', fetchMetres: 9 });
const rows = {
  water: 'pit',
  peg: '1',
  month: 11,
  worth: 0.61,
  low80: 0.5,
  high80: 0.74,
  sessions: 2,
  evidence: 'fair',
} as const;

describe('the strip of answers', () => {
  it('says what a worth means, what it rests on, and where nothing is known', () => {
    const { answer } = pegSheet(
      exampleAtlas({
        ratings: { bags: [{ ...exampleAtlas().ratings.bags[0]!, pegMonths: [rows] }] },
      }),
      'pit/1',
    );
    const [october, november] = [answer.months[9], answer.months[10]];
    expect(november?.worth).toMatchObject({
      known: { middle: '0.61', low: '0.50', high: '0.74' },
      said: 'about 40% below an average peg',
      evidence: 'fair evidence: 2 sessions here and its features',
    });
    expect(october?.worth).toBeNull();
    expect(november?.bag).toBeNull();
  });

  it('names the winds in the face from first to last, across north too', () => {
    const depth = pegSheet(exampleAtlas(), 'pit/1').depth;
    const winds = [face('N', 0), face('NNE', 22.5), face('NNW', 337.5)];
    expect(pegAnswer(null, null, depth, [], winds, 11, inEnglish).windInFace).toBe('NNW to NNE');
    expect(pegAnswer(null, null, depth, [], [], 11, inEnglish).windInFace).toBeNull();
  });

  it('says beside sun and wind that the peg’s facing is by the map, where nobody measured it', () => {
    const measured = exampleAtlas();
    const estimated = exampleAtlas({ venue: { pegs: [examplePeg('1', { isFacingEstimated: true })] } });
    expect([measured, estimated].map((atlas) => pegSheet(atlas, 'pit/1').inYourFace)).toEqual([
      'In your face',
      'In your face, by the map',
    ]);
  });

  it('has no months where neither log nor sky says anything', () => {
    expect(pegAnswer(null, null, pegSheet(exampleAtlas(), 'pit/1').depth, [], [], 11, inEnglish).months).toEqual([]);
  });

  it('tells depth at the margin, 5, 11 and 13 m', () => {
    const line = (id: string, depthMetres: number | null) => ({
      id,
      name: id,
      distanceMetres: 1,
      depthMetres,
      nearestSoundingMetres: null,
      permitted: true,
    });
    const lineDepths = ['margin', 'top-kit-2', 'pole-6', 'pole-11', 'pole-13', 'pole-16'].map((id) => line(id, 1.5));
    const { answer } = pegSheet(exampleAtlas({ peg: { lineDepths } }), 'pit/1');
    expect(answer.depths.map(({ name }) => name)).toEqual(['margin', '5 m', '11 m', '13 m']);
  });
});

it.each([
  [0.61, 'about 40% below an average peg'],
  [0.99, 'much like an average peg'],
  [1.22, 'about 20% above an average peg'],
  [2.43, 'about 2.4 average pegs'],
])('a worth of %d is %s', (value, words) => {
  expect(parWords(value, inEnglish)).toBe(words);
});

it('never calls sessions elsewhere sessions here', () => {
  expect(evidenceWords('thin', 0, inEnglish)).toBe('thin evidence: learned from its features, no sessions here');
  expect(evidenceWords('fair', 0, inEnglish)).toContain('no sessions here');
});
