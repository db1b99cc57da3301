import { defineConfig } from 'vitest/config';

const report = process.env.PEG_ATLAS_REPORT;

/** Three suites: `unit` (fast), `browser` (the built site in Chromium) and `slow` (simulations, kill tests). */
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // `.ci/run` counts from the runner's own report.
    reporters: report === undefined ? ['default'] : ['default', ['json', { outputFile: report }]],
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/slow/**', 'node_modules/**'],
          setupFiles: ['tests/property-seed.ts'],
          environment: 'node',
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          setupFiles: ['tests/property-seed.ts'],
          globalSetup: ['tests/browser/built-site.ts'],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 300_000,
        },
      },
      {
        test: {
          name: 'slow',
          include: ['tests/slow/**/*.test.ts'],
          setupFiles: ['tests/property-seed.ts'],
          testTimeout: 1_200_000,
          hookTimeout: 600_000,
        },
      },
    ],
  },
});
