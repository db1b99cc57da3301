import { describe, expect, test } from 'vitest';
import { usualField } from '../../src/ratings/usual-field.ts';
import { exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

describe('usualField', () => {
  test('takes the middle of the water’s matches, stated or counted', () => {
    const venue = exampleVenue({
      events: [
        exampleEvent('a', { fished: 20, framePlaces: 4 }),
        exampleEvent('b', { fished: 30, framePlaces: 6 }),
        exampleEvent('c', { framePlaces: 3 }),
        exampleEvent('d', { kind: 'pleasure', fished: 3, framePlaces: 1 }),
      ],
      sessions: [exampleSession('c', '1', 'weighed', 100), exampleSession('c', '2', 'absent')],
    });
    expect(usualField(venue, 'pit')).toEqual({ anglers: 20, places: 4 });
  });

  test('gives each water of a match over several its share of the one frame', () => {
    const venue = exampleVenue({
      events: [
        exampleEvent('a', { match: 'open', fished: 30, framePlaces: 8 }),
        exampleEvent('b', { match: 'open', water: 'lake', fished: 10, framePlaces: 8 }),
      ],
    });
    expect(usualField(venue, 'pit')).toEqual({ anglers: 30, places: 6 });
    expect(usualField(venue, 'lake')).toEqual({ anglers: 10, places: 2 });
  });

  test('falls back on the venue’s other waters', () => {
    const venue = exampleVenue({ events: [exampleEvent('a', { water: 'lake', fished: 12, framePlaces: 3 })] });
    expect(usualField(venue, 'pit')).toEqual({ anglers: 12, places: 3 });
  });

  test('is not known without a match', () => {
    expect(usualField(exampleVenue(), 'pit')).toBeNull();
  });
});
