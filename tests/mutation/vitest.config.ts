import { defineConfig } from 'vitest/config';

/** The fast tests of the rooms that the mutation run changes: no builds, no whole demo venue, so that a mutant costs seconds. */
export default defineConfig({
  test: {
    include: [
      'tests/domain/**/*.test.ts',
      'tests/ground/**/*.test.ts',
      'tests/content/**/*.test.ts',
      'tests/ratings/**/*.test.ts',
      'tests/reference/**/*.test.ts',
    ],
    setupFiles: ['tests/property-seed.ts'],
    environment: 'node',
    testTimeout: 120_000,
  },
});
