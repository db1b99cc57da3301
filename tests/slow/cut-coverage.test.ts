import { expect, it } from 'vitest';
import { cutCoverage } from '../ratings/cuts/cut-coverage.ts';
import { SIMULATIONS } from '../ratings/cuts/simulated-banks.ts';

const SEEDS = Array.from({ length: 40 }, (_, index) => index + 1);
const cases = Object.entries(SIMULATIONS).flatMap(([name, simulate]) =>
  [2.75, 6, 12].map((years) => ({ name, years, simulate })),
);

// 80% intervals cover 76 to 84% of the days on which a bank truly came to need its next cut, whether it was looked at daily,
// monthly or four times a year. Table, also of other seeds: `npm run -s reference:cuts`, `npm run -s reference:cuts -- 40 '' 101`.
it.each(cases)(
  'four in five next cuts are needed where they are forecast: $name, $years years',
  ({ years, simulate }) => {
    const { inside } = cutCoverage(SEEDS.map((seed) => simulate(years, seed)));
    expect(inside).toBeGreaterThanOrEqual(0.76);
    expect(inside).toBeLessThanOrEqual(0.84);
  },
);
