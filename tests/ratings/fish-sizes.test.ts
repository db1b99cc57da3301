import { describe, expect, test } from 'vitest';
import { fishSizes } from '../../src/ratings/fish-sizes.ts';
import { exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const carp = (event: string, peg: string, weightGrams: number, count?: number) =>
  exampleSession(event, peg, 'weighed', weightGrams, {
    parts: { carp: { weightGrams, ...(count === undefined ? {} : { count }) } },
  });

describe('fishSizes', () => {
  const events = [exampleEvent('a'), exampleEvent('b', { day: '2025-06-01' })];

  test('divides all weight by all fish, by year in order', () => {
    const sessions = [carp('a', '1', 9000, 5), carp('a', '2', 3000, 1), carp('b', '1', 4000, 4)];
    const sizes = fishSizes(exampleVenue({ events, sessions }));
    expect(sizes.map(({ year, fish, meanGrams }) => ({ year, fish, meanGrams }))).toEqual([
      { year: 2025, fish: 4, meanGrams: 1000 },
      { year: 2026, fish: 6, meanGrams: 2000 },
    ]);
  });

  test('narrows the interval with more fish and always holds the mean inside', () => {
    const few = [carp('a', '1', 4000, 2), carp('a', '2', 3000, 2)];
    const many = Array.from({ length: 20 }, (_, i) => carp('a', String(i), i % 2 === 0 ? 4000 : 3000, 2));
    const width = (sessions: typeof few) => {
      const [size] = fishSizes(exampleVenue({ events, sessions }));
      expect(size!.low80Grams).toBeLessThan(size!.meanGrams);
      expect(size!.high80Grams).toBeGreaterThan(size!.meanGrams);
      return Math.log(size!.high80Grams / size!.low80Grams);
    };
    expect(width(many)).toBeLessThan(width(few) / 2);
  });

  test('states a wide interval from a single session, whose scatter nothing shows', () => {
    const [size] = fishSizes(exampleVenue({ events, sessions: [carp('a', '1', 4000, 2)] }));
    expect(size!.high80Grams / size!.low80Grams).toBeGreaterThan(4);
  });

  test('leaves out weights without a count, and counts without fish', () => {
    expect(fishSizes(exampleVenue({ events, sessions: [carp('a', '1', 4000), carp('a', '2', 0, 0)] }))).toEqual([]);
  });
});
