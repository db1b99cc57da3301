import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bankFacts, slopeWords, walksWorthTelling, walkWords } from '../../src/atlas/peg-bank.ts';
import type { Walk } from '../../src/ground/survey.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { EXAMPLE_PEG_SURVEY } from './example-atlas.ts';

const UNITS = { length: 'm', weight: 'lb' } as const;
const WALK: Walk = {
  from: 'Lodge',
  distanceMetres: 139.6,
  steps: 9,
  steepest: 1 / 12,
  stepFree: false,
  narrowestMetres: null,
  notStated: [],
  underLines: [],
};

describe('bankFacts', () => {
  it('reads "not known" where nobody recorded anything, never as good', () => {
    expect(bankFacts(examplePeg('1'), UNITS).map(({ words }) => words)).toEqual([
      'not known',
      'not known',
      'not known',
      'steps not known',
    ]);
  });

  it('puts sizes, slope and steps into the words of the bank', () => {
    const peg = examplePeg('1', {
      platform: { kind: 'timber', widthMetres: 1.8, lengthMetres: 2.4, heightAboveWaterMetres: 0.4 },
      bank: { slopeDegrees: 26.565, heightMetres: 1.2, surface: 'grass', steps: 6, handrail: false },
      clearance: { clearWidthMetres: 4, lowestBranchMetres: 3.2, pathWidthMetres: 1.1, measuredOn: '2026-10-02' },
      access: { stepFree: false, pathSurface: 'stone' },
    });
    expect(bankFacts(peg, UNITS).map(({ words }) => words)).toEqual([
      'timber, 1.80 m by 2.40 m, 0.40 m above the water, condition not known',
      'slopes 1 in 2 (27°), 1.20 m high, grass, 6 steps, no handrail',
      '4.0 m, lowest branch 3.20 m, measured 2 Oct 2026',
      'stone, 1.10 m wide, not step-free',
    ]);
  });

  it('speaks feet where the venue does', () => {
    const peg = examplePeg('1', { bank: { heightMetres: 1.2192 } });
    expect(bankFacts(peg, { ...UNITS, length: 'ft' })[1]?.words).toBe('4 ft high');
  });
});

// "1 in N" is one up for N along: 1 in 2 is 26.6°, 1 in 3 is 18.4°, 1 in 12 is 4.8° (arithmetic).
it.each([
  [26.565, '1 in 2 (27°)'],
  [33.69, '1 in 1.5 (34°)'],
  [18.435, '1 in 3 (18°)'],
  [4.764, '1 in 12 (5°)'],
  [0.4, 'level'],
])('a slope of %d° is spoken of as %s', (degrees, words) => {
  expect(slopeWords(degrees)).toBe(words);
});

describe('walks', () => {
  it('are told with distance, steps, gradient and whether they are step-free', () => {
    expect(walkWords(WALK, UNITS)).toBe('140 m, 9 steps, steepest 1 in 12, not step-free');
    expect(walkWords({ ...WALK, steps: 0, steepest: null, stepFree: null }, UNITS)).toBe('140 m, steps not known');
  });

  it('say which figures hold for a part of the way only, and name a way round the steps', () => {
    const walk: Walk = { ...WALK, narrowestMetres: 0.9, notStated: ['gradient', 'width'], stepFreeMetres: 224.2 };
    expect(walkWords(walk, UNITS)).toBe(
      '140 m, 9 steps, steepest stated 1 in 12, narrowest stated 0.90 m, not step-free, a way without known steps is 224 m',
    );
  });

  it('worth telling are the shortest and the shortest step-free one', () => {
    const near = { ...WALK, from: 'Track', distanceMetres: 80 };
    const free = { ...WALK, from: 'Yard', distanceMetres: 200, stepFree: true };
    const farther = { ...free, from: 'Road', distanceMetres: 900 };
    const told = walksWorthTelling({ ...EXAMPLE_PEG_SURVEY, walks: [near, WALK, free, farther] });
    expect(told.map(({ from }) => from)).toEqual(['Track', 'Yard']);
    expect(walksWorthTelling({ ...EXAMPLE_PEG_SURVEY, walks: [free] })).toHaveLength(1);
    expect(walksWorthTelling(EXAMPLE_PEG_SURVEY)).toEqual([]);
  });

  it('tells first the shortest way clear of every overhead line, and one below a line only where there is no other', () => {
    const walk = fc.record({
      distanceMetres: fc.integer({ min: 1, max: 900 }),
      underLines: fc.constantFrom([], [], ['11 kV line']),
      stepFree: fc.constantFrom(true, false, null),
    });
    fc.assert(
      fc.property(fc.array(walk, { minLength: 1, maxLength: 6 }), (made) => {
        const walks = made
          .map((each, i) => ({ ...WALK, ...each, from: `car park ${i}` }))
          .sort((a, b) => a.distanceMetres - b.distanceMetres);
        const told = walksWorthTelling({ walks });
        const clear = walks.filter(({ underLines }) => underLines.length === 0);
        expect(told[0]).toBe(clear[0] ?? walks[0]);
        expect(told.some(({ underLines }) => underLines.length > 0)).toBe(clear.length === 0);
      }),
    );
  });
});
