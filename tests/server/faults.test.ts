import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { runFaults } from '../faults/main.ts';
import { ensurePartsBuilt } from './support/server-process.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

beforeAll(() => ensurePartsBuilt(['server', 'tests']), 240_000);
// A busy machine may take seconds to start a process; nothing here measures how long.
vi.setConfig({ testTimeout: 120_000 });

/** As users run it: compiled. */
async function faults(
  options: Omit<Parameters<typeof runFaults>[0], 'say' | 'mostSoundMs'>,
): Promise<{ readonly lines: readonly string[] } & Awaited<ReturnType<typeof runFaults>>> {
  const { runFaults: run } = (await import(/* @vite-ignore */ pathToFileURL(join(ROOT, '.build/js/tests/faults/main.js')).href)) as {
    runFaults: typeof runFaults;
  };
  const lines: string[] = [];
  // Nothing is asserted of how soon a call sounds: the command by hand measures that.
  return { ...(await run({ ...options, mostSoundMs: Number.POSITIVE_INFINITY, say: (line) => lines.push(line) })), lines };
}

describe('the fault campaign', () => {
  it('FC1 loses nothing: killed, cut, filled up, its clock set, a second server beside it', async () => {
    const { isWhole, counts, lines } = await faults({ rounds: 3, seed: 20_261_128 });
    expect(isWhole, lines.join('\n')).toBe(true);
    expect(counts.rounds).toBe(3);
    expect(counts.taps).toBeGreaterThan(50);
    expect(counts.acknowledged).toBeGreaterThan(30);
    expect(counts.kills).toBeGreaterThan(0);
  });

  it('FC2 finds a tap that was lost and acknowledged', async () => {
    const { isWhole, lines } = await faults({ rounds: 1, seed: 7, forgesEvery: 3 });
    expect(isWhole).toBe(false);
    expect(lines.join('\n')).toMatch(/was acknowledged at 1, its events end at undefined/);
  });
});
