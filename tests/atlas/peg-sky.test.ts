import { describe, expect, it } from 'vitest';
import { sunMonths, windRows } from '../../src/atlas/peg-sky.ts';
import { COMPASS_POINTS } from '../../src/domain/compass.ts';
import type { WindAtPeg } from '../../src/ground/survey.ts';
import { inEnglish } from '../../src/words/say.ts';
import { EXAMPLE_PEG_SURVEY } from './example-atlas.ts';

const UNITS = { length: 'm', weight: 'lb' } as const;

/** Sixteen winds at a peg that faces north, each with a fetch of its own. */
const WIND: readonly WindAtPeg[] = COMPASS_POINTS.map((from, index) => {
  const fromDegrees = index * 22.5;
  const turn = ((fromDegrees + 180) % 360) - 180;
  const meets =
    Math.abs(turn) <= 45
      ? 'face'
      : Math.abs(turn) >= 135
        ? 'back'
        : turn < 0
          ? 'across from the left'
          : 'across from the right';
  return { from, fromDegrees, meets, fetchMetres: 10 + index };
});

describe('windRows', () => {
  it('puts the sixteen winds together by how they meet the angler, clockwise across north', () => {
    const [face] = windRows({ ...EXAMPLE_PEG_SURVEY, wind: WIND }, UNITS, inEnglish);
    expect(face).toEqual({ meets: 'In your face', from: 'NW, NNW, N, NNE, NE', fetch: '10 m to 25 m' });
  });

  it('names every wind once', () => {
    const named = windRows({ ...EXAMPLE_PEG_SURVEY, wind: WIND }, UNITS, inEnglish).flatMap(({ from }) =>
      from.split(', '),
    );
    expect(named.sort()).toEqual([...COMPASS_POINTS].sort());
  });

  it('writes one fetch where all are alike', () => {
    const wind = WIND.map((each) => ({ ...each, fetchMetres: 12.2 }));
    expect(windRows({ ...EXAMPLE_PEG_SURVEY, wind }, UNITS, inEnglish)[0]?.fetch).toBe('12 m');
  });
});

it('sunMonths says when the sun never blinds, and when it does not set', () => {
  const sun = [
    { month: 1, sunrise: '08:05', sunset: '16:10', inFace: [] },
    { month: 6, sunrise: null, sunset: null, inFace: [['08:10', '09:40']] },
  ] as const;
  expect(sunMonths({ ...EXAMPLE_PEG_SURVEY, sun }, inEnglish)).toEqual([
    { month: 1, name: 'January', daylight: '08:05 to 16:10', inFace: 'never' },
    { month: 6, name: 'June', daylight: 'sun does not rise and set', inFace: '08:10 to 09:40' },
  ]);
});
