import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { pegNumbers } from '../../../src/content/new-venue/peg-numbers.ts';

test.each([
  ['3', ['1', '2', '3']],
  ['1-3, 5, 6a', ['1', '2', '3', '5', '6a']],
  ['1–3 and 7', ['1', '2', '3', '7']],
  ['010', ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10']],
  ['04, 14A', ['4', '14a']],
])('%s says %j', (said, numbers) => expect(pegNumbers(said)).toEqual(numbers));

test.each(['', '0', '9-3', '1-3, 2', 'twelve', '1-9999', '601', '23ab', '-4', '1;DROP'])('%j says no pegs', (said) =>
  expect(pegNumbers(said)).toBeNull(),
);

test('whatever is said, the numbers are painted ones, each once', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 30 }), (said) => {
      const numbers = pegNumbers(said);
      if (numbers === null) return;
      expect(numbers.length).toBeGreaterThan(0);
      expect(new Set(numbers).size).toBe(numbers.length);
      for (const number of numbers) expect(number).toMatch(/^[0-9]{1,4}[a-z]?$/);
    }),
  );
});
