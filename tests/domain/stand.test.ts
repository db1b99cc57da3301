import { expect, test } from 'vitest';
import { placeKey } from '../../src/domain/stand.ts';
import { examplePeg } from './example-venue.ts';

test('what a phone keeps of a place stays with it when its number goes to another, and ends where it is moved', () => {
  const moved = { metres: 8, newGround: true };
  expect([
    placeKey(examplePeg('10')),
    placeKey(examplePeg('11', { was: [{ peg: '10', until: '2026-02-28' }] })),
    placeKey(examplePeg('10', { since: '2026-03-01' })),
    placeKey(
      examplePeg('12', {
        moved: [
          { ...moved, on: '2025-03-01' },
          { ...moved, on: '2026-03-01' },
        ],
      }),
    ),
  ]).toEqual(['pit/10', 'pit/10', 'pit/10@2026-03-01', 'pit/12@2026-03-01']);
});
