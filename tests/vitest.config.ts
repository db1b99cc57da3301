import { defineConfig } from 'vitest/config';

const report = process.env.PEG_ATLAS_REPORT;

/** Four suites: `unit` (fast), `browser` (the built site in Chromium), `hostile` (broken and malicious folders) and `slow` (simulations, kill tests). */
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
          exclude: ['tests/browser/**', 'tests/hostile/**', 'tests/slow/**', 'node_modules/**'],
          setupFiles: ['tests/property-seed.ts'],
          environment: 'node',
          // A limit to end what hangs: a machine that others load slows the longest property tests threefold.
          testTimeout: 300_000,
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
          name: 'hostile',
          include: ['tests/hostile/**/*.test.ts'],
          setupFiles: ['tests/property-seed.ts'],
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
