import { describe, expect, it } from 'vitest';
import {
  type PaceWater,
  paceLines,
  spreadWords,
  targetGrams,
  targetWords,
} from '../../../src/client/pace/pace-words.ts';
import { paceOf } from '../../../src/match-day/pace.ts';
import { inEnglish as say } from '../../../src/words/say.ts';

const WATER: PaceWater = {
  name: 'Kiln Pool',
  weightUnit: 'kg',
  framing: { 11: { frame: 8000, win: null, matches: 3 } },
  logged: { 11: { bags: 40, percentiles: [0, 1000, 2000, 4000, 9000] } },
};

describe('the words of the pace', () => {
  it('tell the aim and the matches behind it, and where none says so', () => {
    expect(targetWords({ kind: 'frame' }, WATER, 11, say)).toBe(
      '8 kg, typical to frame in November (3 matches logged)',
    );
    expect(targetWords({ kind: 'win' }, WATER, 11, say)).toBe('not known: no match logged in November. Set your own.');
    expect(targetWords({ kind: 'own', grams: 5000 }, WATER, 2, say)).toBe('5.00 kg, your own');
    expect(targetGrams({ kind: 'frame' }, WATER, 2)).toBeNull();
  });

  it('tell by what a bag is laid over the hours: thin, of another length, or evenly for want of a log', () => {
    const known = {
      about: 'October to December',
      bags: 24,
      matches: 9,
      matchHours: 5,
      isThin: false,
      shares: [0.2, 0.2, 0.2, 0.2, 0.2],
    };
    expect(spreadWords(known, 5, say)).toBe(
      'by when fish came here in October to December (24 bags of 9 matches, noted by anglers). Every part of the bag is taken to come like the whole.',
    );
    expect(spreadWords({ ...known, isThin: true }, 5, say)).toContain('Thin: so few matches may mislead.');
    expect(spreadWords({ ...known, matchHours: 4.5 }, 5, say)).toContain('Those matches lasted 4.5 hours');
    expect(spreadWords(known, 6, say)).toContain('Those matches lasted 5 hours: their shares are spread over yours.');
    expect(spreadWords(undefined, 6, say)).toContain('spread evenly over 6 hours: too few matches');
  });

  it('tell time, what is needed, the end and the standing', () => {
    const caught = [{ minute: 60, part: 'carp', grams: 4000 }];
    expect(paceLines(paceOf(caught, 120, 300, 8000), 8000, WATER, 11, say)).toEqual([
      '3 h 00 min left.',
      '4.00 kg to go: 1.33 kg an hour from here.',
      'Going on like this it ends at about 10 kg.',
      'As it is, it beats 75 in 100 of the 40 match bags logged on Kiln Pool in November.',
    ]);
    expect(paceLines(paceOf(caught, 300, 300, 8000), 8000, WATER, 2, say)).toEqual([
      'All out: this is the bag to weigh.',
      '4.00 kg short of it.',
      'Too few bags are logged in February to say where it stands.',
    ]);
  });
});
