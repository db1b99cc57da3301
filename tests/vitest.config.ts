import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { filesThatReplaceModules } from './replaces-modules.ts';

const report = process.env.PEG_ATLAS_REPORT;
const root = fileURLToPath(new URL('..', import.meta.url));
const replacing = filesThatReplaceModules(root);

const unit = {
  setupFiles: ['tests/property-seed.ts'],
  environment: 'node' as const,
  // What a test puts in place of a global or a variable of the environment, the next one does not find.
  unstubGlobals: true,
  unstubEnvs: true,
  restoreMocks: true,
  // A limit to end what hangs: a machine that others load slows the longest property tests threefold.
  testTimeout: 300_000,
};

/**
 * Four suites: `unit` (fast), `browser` (the built site in Chromium), `hostile` (broken and malicious folders) and `slow` (simulations, kill tests).
 * The files of `unit` share loaded modules, which is most of what a small test costs; `unit-apart` are those that replace modules.
 */
export default defineConfig({
  root,
  test: {
    // Left to itself the runner keeps one of two processors for itself.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    // `.ci/run` counts from the runner's own report.
    reporters: report === undefined ? ['default'] : ['default', ['json', { outputFile: report }]],
    projects: [
      {
        test: {
          ...unit,
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/hostile/**', 'tests/slow/**', 'node_modules/**', ...replacing],
          isolate: false,
        },
      },
      { test: { ...unit, name: 'unit-apart', include: [...replacing] } },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          setupFiles: ['tests/property-seed.ts'],
          globalSetup: ['tests/browser/built-site.ts'],
          // A page is asked again for so long: on a loaded machine the runner's own second is over before a page has drawn itself.
          expect: { poll: { timeout: 20_000 } },
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
