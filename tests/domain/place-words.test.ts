import { expect, it } from 'vitest';
import { compassWords, formatDistance, formatPosition } from '../../src/domain/place-words.ts';

it('formatDistance rounds to whole metres or feet', () => {
  expect(formatDistance(139.6, { length: 'm' })).toBe('140 m');
  expect(formatDistance(30.48, { length: 'ft' })).toBe('100 ft');
});

it('compassWords takes the nearest of eight points, either side of north', () => {
  expect(compassWords(48)).toBe('north-east');
  expect(compassWords(350)).toBe('north');
  expect(compassWords(-90)).toBe('west');
});

// ISO 6709, annex D (as summaries give it): for people, N, S, E and W stand behind the figures.
it('formatPosition gives five places and letters, never a minus sign', () => {
  expect(formatPosition({ lat: 52.751262, lng: -0.054814 })).toBe('52.75126 N, 0.05481 W');
  expect(formatPosition({ lat: -33.9, lng: 18.4 })).toBe('33.90000 S, 18.40000 E');
  expect(formatPosition({ lat: 0, lng: -0.000001 })).toBe('0.00000 N, 0.00000 E');
});
