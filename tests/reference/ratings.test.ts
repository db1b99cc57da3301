import { describe, expect, it } from 'vitest';
import { RATINGS_CASES } from './ratings/all-cases.ts';
import { isWithin } from './ratings/figure.ts';

/** Sources stand with each case in `ratings/` and in its data file; `npm run reference:ratings` prints the figures as a table. */
describe('the statistics engine agrees with published figures', () => {
  for (const reference of RATINGS_CASES) {
    describe(`${reference.name} (${reference.source})`, () => {
      const figures = reference.figures();
      it('has figures', () => {
        expect(figures.length).toBeGreaterThan(0);
      });
      for (const figure of figures) {
        it(`${figure.figure} is ${figure.expected}`, () => {
          expect(isWithin(figure), `found ${figure.found}`).toBe(true);
        });
      }
    });
  }
});
