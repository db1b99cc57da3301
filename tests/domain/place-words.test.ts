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

it('formatPosition gives five places and a true minus sign', () => {
  expect(formatPosition({ lat: 52.751262, lng: -0.054814 })).toBe('52.75126, −0.05481');
});
