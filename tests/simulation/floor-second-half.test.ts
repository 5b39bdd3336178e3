import { describe, it } from 'vitest';
import { runSeeds, seedsFromEnvironment, summary } from './support/sim-seeds.ts';

/** The longest that all seeds may take before something hangs; no measure of speed. */
const HANGING_MS = 24 * 3_600_000;

describe('a floor on which everything goes wrong, the second half of the seeds', () => {
  const all = seedsFromEnvironment(process.env);
  const seeds = all.slice(Math.ceil(all.length / 2));

  it(
    'S1–S11, S14 and S16 hold for every seed',
    async () => {
      process.stdout.write(summary(seeds, await runSeeds(seeds)));
    },
    HANGING_MS,
  );
});
