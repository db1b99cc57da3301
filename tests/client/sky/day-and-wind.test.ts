import { describe, expect, it } from 'vitest';
import { sunWords, windWords, windWorthWords } from '../../../src/client/sky/day-and-wind.ts';

const sky = {
  at: { lat: 51.4779, lng: 0 },
  facingDegrees: 180,
  timeZone: 'Europe/London',
  units: { length: 'm' as const },
  fetchMetres: Array.from({ length: 16 }, (_, index) => 10 * index),
  worths: null,
};

describe('the sun and wind of another day', () => {
  it('tells a winter noon sun low over the float to an angler who faces south', () => {
    expect(sunWords(sky, '2026-12-21')).toMatch(
      /^21 Dec 2026: daylight 08:0\d to 15:5\d; sun low over the float \d\d:\d\d to \d\d:\d\d\.$/,
    );
  });

  it('tells no sun over the float to one who faces north', () => {
    expect(sunWords({ ...sky, facingDegrees: 0 }, '2026-12-21')).toContain('the sun is never low over the float.');
  });

  it('takes the clock of summer in summer', () => {
    // Sunrise at Greenwich on the June solstice: 04:43 BST (almanac figure from memory), within two minutes.
    expect(sunWords(sky, '2026-06-21')).toMatch(/daylight 04:4[2-5] to 21:2[0-3]/);
  });

  it('asks for a day that exists', () => {
    expect(sunWords(sky, '')).toBe('Choose a day.');
  });

  it('says how a wind meets the angler and what it has crossed', () => {
    expect(windWords(sky, '8')).toBe('A wind from S is in your face, over 80 m of open water.');
    expect(windWords(sky, '0')).toBe('A wind from N comes off your back, over 0 m of open water.');
    expect(windWords(sky, '4')).toBe('A wind from E blows left to right, over 40 m of open water.');
    expect(windWords({ ...sky, units: { length: 'ft' } }, '12')).toContain('right to left, over 394 ft');
    expect(windWords(sky, '')).toBe('');
  });

  it('says by what a wind multiplies the bags, where the log told it of such a wind', () => {
    const point = (fetchMetres: number, worth: number) => ({
      fetchMetres,
      worth,
      low80: worth - 0.1,
      high80: worth + 0.1,
    });
    const worths = { 'force 4 and over, April to September': [point(5, 0.9), point(80, 1.2)] };
    const asked = { day: '2026-06-21', pointIndex: '8', isFresh: true };
    expect(windWorthWords({ ...sky, worths }, asked)).toContain(
      'Multiply the expected bags by 1.20 (likely 1.10 to 1.30)',
    );
    expect(windWorthWords({ ...sky, worths }, { ...asked, day: '2026-12-21' })).toContain('The log tells nothing');
    expect(windWorthWords({ ...sky, worths }, { ...asked, pointIndex: '' })).toBe('');
    expect(windWorthWords(sky, asked)).toBe('');
  });
});
