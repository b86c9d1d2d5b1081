import { defineConfig } from 'vitest/config';

const databaseTests = [
  'packages/**/*.db.test.{ts,tsx}',
  'apps/cli/**/*.db.test.{ts,tsx}',
  'apps/api/**/*.test.{ts,tsx}',
];

// One server for a whole run: see tests/harness.
const postgres = 'tests/harness/src/global-setup.ts';

export default defineConfig({
  test: {
    passWithNoTests: true,
    coverage: { provider: 'v8', include: ['packages/*/src/**', 'apps/*/src/**'], exclude: ['**/*.test.*'] },
    projects: [
      {
        // Pure functions and views: nothing to isolate, so one module graph serves all files of a thread.
        oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
        test: {
          name: 'unit',
          include: ['packages/*/src/**/*.test.{ts,tsx}', 'apps/{web,cli}/src/**/*.test.{ts,tsx}'],
          exclude: databaseTests,
          pool: 'threads',
          isolate: false,
          maxWorkers: 2,
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        oxc: { jsx: { runtime: 'automatic', importSource: 'hono/jsx' } },
        test: {
          name: 'service',
          include: databaseTests,
          pool: 'forks',
          isolate: true,
          maxWorkers: 2,
          globalSetup: [postgres],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'architecture',
          include: ['tests/architecture/**/*.test.ts'],
          maxWorkers: 2,
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'tests',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/architecture/**'],
          pool: 'forks',
          isolate: true,
          maxWorkers: 2,
          globalSetup: [postgres],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
