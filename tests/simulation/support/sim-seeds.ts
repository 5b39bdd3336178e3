import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addCounts, countWord, noCounts, type Counts, type WordCounts } from './counts.ts';
import type { Plant } from './plant.ts';
import { simulate, type Report } from './simulation.ts';

/** Seeds for both halves together, where nobody asks for others. Chosen by the 30 s that the simulation may take on two cores. */
const SEEDS = 130;

/** The seeds to run: SIM_SEEDS of them, from SIM_FROM on. Throws on what is no whole number. */
export function seedsFromEnvironment(environment: Readonly<Record<string, string | undefined>>): readonly number[] {
  const from = wholeNumber('SIM_FROM', environment['SIM_FROM'] ?? '1');
  const count = wholeNumber('SIM_SEEDS', environment['SIM_SEEDS'] ?? String(SEEDS));
  return Array.from({ length: count }, (_, index) => from + index);
}

function wholeNumber(name: string, text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new Error(`${name} is a whole number, not "${text}"`);
  return Number(text);
}

/** A folder for the snapshots of some runs, gone when they are over. */
export async function inFolder<Value>(run: (folder: string) => Promise<Value>): Promise<Value> {
  const folder = mkdtempSync(join(tmpdir(), 'ovenward-simulation-'));
  try {
    return await run(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs one seed. */
export function runSeed(seed: number, plant: Plant = {}): Promise<Report> {
  return inFolder((folder) => simulate({ seed, folder, plant }));
}

/** What happened in some runs. */
export interface Total {
  readonly counts: Counts;
  readonly words: WordCounts;
}

/**
 * Runs seeds one after another and adds up what happened; those of `further` as well while `isWanting`. Throws at the first that broke an
 * invariant, with how to run it alone.
 */
export function runSeeds(
  seeds: readonly number[],
  further: readonly number[] = [],
  isWanting: (total: Total) => boolean = () => false,
): Promise<Total> {
  return inFolder(async (folder) => {
    const total = { counts: noCounts(), words: {} };
    for (const [index, seed] of [...seeds, ...further].entries()) {
      if (index >= seeds.length && !isWanting(total)) break;
      const report = await simulate({ seed, folder });
      throwIfBroken(report);
      addCounts(total.counts, report.counts);
      for (const [type, count] of Object.entries(report.words)) countWord(total.words, type, count);
    }
    return total;
  });
}

/** Throws where a run broke an invariant. */
export function throwIfBroken({ seed, violation }: Report): void {
  if (violation === null) return;
  const alone = `SIM_FROM=${seed} SIM_SEEDS=1 npx vitest run --config tests/vitest.config.ts --project simulation tests/simulation/floor.test.ts`;
  throw new Error(`seed ${seed} broke ${violation.rule}: ${violation.text}\nRun it alone: ${alone}`);
}

/** One line about some runs. */
export function summary(seeds: readonly number[], { counts, words: said }: Total): string {
  const range = seeds.length === 0 ? 'none' : `${seeds[0] ?? 0} to ${seeds.at(-1) ?? 0}`;
  const words = Object.entries(counts).map(([name, count]) => `${name} ${count}`);
  const accepted = Object.entries(said).map(([type, count]) => `${type} ${count.accepted} of ${count.said}`);
  return `simulation: ${seeds.length} seeds (${range}); ${words.join(', ')}; words accepted: ${accepted.join(', ')}\n`;
}
