import { expect, it } from 'vitest';
import { cutCoverage } from '../ratings/cuts/cut-coverage.ts';
import { SIMULATIONS } from '../ratings/cuts/simulated-banks.ts';

const SEEDS = Array.from({ length: 20 }, (_, index) => index + 1);
const cases = Object.entries(SIMULATIONS).flatMap(([name, simulate]) =>
  [2.75, 6, 12].map((years) => ({ name, years, simulate })),
);

// Design of the guide, section 4: 80% intervals cover 76 to 84% of the truths. Table: `npm run -s reference:cuts`.
it.each(cases)('four in five next cuts fall where they are forecast: $name, $years years', ({ years, simulate }) => {
  const { inside } = cutCoverage(SEEDS.map((seed) => simulate(years, seed)));
  expect(inside).toBeGreaterThanOrEqual(0.76);
  expect(inside).toBeLessThanOrEqual(0.84);
});
