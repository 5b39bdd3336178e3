import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Two cores are what the tests may count on; more only makes the domain's results come sooner. */
const WORKERS = 2;

/** Several real pages of one real server, sounding and answering one another by the real clock. */
const LIVE = ['sound', 'whole-batch', 'demo-saturday', 'day-running', 'station-page'].map((name) => `tests/browser/${name}.test.ts`);

// Five projects, each within a budget of wall-clock time that server/cli/test-stages.mjs states. Nothing is retried, skipped or
// focused: a test that passes at the second try has found something.
export default defineConfig({
  root,
  cacheDir: '.build/vitest',
  test: {
    allowOnly: false,
    passWithNoTests: false,
    retry: 0,
    environment: 'node',
    restoreMocks: true,
    unstubEnvs: true,
    unstubGlobals: true,
    maxWorkers: WORKERS,
    projects: [
      {
        extends: true,
        test: {
          name: 'domain',
          include: ['tests/domain/**/*.test.ts'],
          // Pure functions leave nothing behind, so that the modules can stay loaded from one file to the next.
          pool: 'threads',
          isolate: false,
          // For what hangs, never for what is slow: that is told by the budgets. A busy machine takes many times as long.
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'server',
          include: ['tests/server/**/*.test.ts', 'tests/tooling/**/*.test.ts'],
          pool: 'forks',
          // Loading the server's modules anew for each file would take longer than its tests.
          isolate: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'simulation',
          include: ['tests/simulation/**/*.test.ts'],
          pool: 'threads',
          testTimeout: 60_000,
          hookTimeout: 15_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: LIVE,
          // Looks at pages that stand still: two browsers on two cores, since each waits for the other half of its time.
          pool: 'forks',
          testTimeout: 120_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'live',
          include: LIVE,
          // One file at a time: what sounds and answers by the real clock has the machine to itself.
          pool: 'forks',
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
