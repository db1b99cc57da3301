import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import { numberBook } from '../../src/domain/number-book.ts';
import { examplePeg } from './example-venue.ts';

test('a re-pegging every so often: each number leads to the stand that carried it, on every day', () => {
  // An independent account: who stands at which place is fixed, and the numbers are shifted by one on each day of a list.
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 8 }),
      fc.uniqueArray(fc.integer({ min: 1, max: 300 }), { maxLength: 5 }),
      fc.integer({ min: 0, max: 320 }),
      (stands, shifts, at) => {
        const days = shifts.sort((a, b) => a - b).map((shift) => addDays('2025-01-01', shift));
        const pegs = Array.from({ length: stands }, (_, i) =>
          examplePeg(String(i + 1 + days.length), {
            id: `s-${i}`,
            was: days.map((day, shift) => ({ peg: String(i + 1 + shift), until: addDays(day, -1) })),
          }),
        );
        const day = addDays('2025-01-01', at);
        const shifted = days.filter((shift) => shift <= day).length;
        const { standOn } = numberBook(pegs);
        for (let number = 1; number <= stands + days.length; number++) {
          const found = standOn('pit', String(number), day);
          const place = number - 1 - shifted;
          expect(found.ok ? found.stand.id : null).toBe(place >= 0 && place < stands ? `s-${place}` : null);
        }
      },
    ),
  );
});
