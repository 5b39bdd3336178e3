import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Random } from '../simulation/support/random.ts';
import { freePort, inTemporaryFolder } from '../bench/places.ts';
import { FaultHouse, NO_COUNTS, type Counts } from './fault-house.ts';
import { runSiege } from './siege.ts';
import { SmallDisk } from './small-disk.ts';

/** A data folder lives through so many rounds; then a new one is begun, and the old one's hash chain looked at as a whole. */
const ROUNDS_A_FOLDER = 12;
const MAX_ROUNDS = 100_000;
/** What is due on return is asked for within so long, in ms. */
const MOST_SOUND_MS = 1000;
/** Exit code of a command line that cannot be understood, as shells use it. */
const USAGE = 2;

/**
 * `npm run -s faults -- --rounds N --seed S`: rounds of a real server on a real file under load from websocket clients, with everything that
 * can go wrong on a kitchen's floor. A line of JSON a round on standard output, and one for all at the end; exit code 1 where anything was
 * lost, doubled or different. Everything runs on the loopback address and ends with it.
 */
export async function main(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (options === null) {
    process.stderr.write(`Usage: npm run -s faults -- [--rounds N] [--seed S] | --siege   N from 1 to ${MAX_ROUNDS}\n`);
    return USAGE;
  }
  if (options.siege) {
    const result = await runSiege();
    process.stdout.write(`${JSON.stringify(result)}\n`);
    return result.violations.length === 0 ? 0 : 1;
  }
  const { isWhole } = await runFaults({ ...options, say: (line) => process.stdout.write(`${line}\n`) });
  return isWhole ? 0 : 1;
}

export interface FaultOptions {
  readonly rounds: number;
  readonly seed: number;
  readonly say: (line: string) => void;
  /** Without a word, what the bar is. Tests assert no timing. */
  readonly mostSoundMs?: number;
  /** To see that a lost tap is found: every so many one is. */
  readonly forgesEvery?: number;
}

/** Runs rounds; what they did, and whether nothing was wrong. */
export async function runFaults({
  rounds,
  seed,
  say,
  mostSoundMs = MOST_SOUND_MS,
  forgesEvery = 0,
}: FaultOptions): Promise<{ readonly isWhole: boolean; readonly counts: Counts }> {
  const counts: Counts = { ...NO_COUNTS };
  let violations = 0;
  let acknowledged = 0;
  let refused = 0;
  let hasDisk = false;
  for (let done = 0; done < rounds; done += ROUNDS_A_FOLDER) {
    await inTemporaryFolder(async (base) => {
      const folder = join(base, 'data');
      mkdirSync(folder);
      const disk = SmallDisk.mounted(folder);
      hasDisk ||= disk !== null;
      try {
        const random = new Random(seed + done, 'faults');
        const house = new FaultHouse({
          folder: join(folder, 'house'),
          shiftFolder: base,
          port: await freePort(),
          random,
          counts,
          disk,
          mostSoundMs,
          forgesEvery,
        });
        try {
          await house.open();
          for (let round = done; round < Math.min(rounds, done + ROUNDS_A_FOLDER); round += 1) {
            const wrong = await house.round();
            violations += wrong.length;
            say(JSON.stringify({ round: round + 1, seed: seed + done, events: counts.events, violations: wrong }));
          }
          acknowledged += counts.acknowledged;
          refused += counts.refused;
        } finally {
          await house.end();
        }
        const broken = await house.brokenChain();
        violations += broken.length;
        for (const line of broken) say(JSON.stringify({ folder: done / ROUNDS_A_FOLDER + 1, violations: [line] }));
      } finally {
        disk?.unmount();
      }
    });
  }
  say(JSON.stringify({ ...counts, acknowledged, refused, hasDisk, violations }));
  return { isWhole: violations === 0, counts: { ...counts, acknowledged, refused } };
}

function readOptions(args: readonly string[]): { readonly rounds: number; readonly seed: number; readonly siege: boolean } | null {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        rounds: { type: 'string', default: '30' },
        seed: { type: 'string', default: '1' },
        siege: { type: 'boolean', default: false },
      },
    });
    const [rounds, seed] = [Number(values.rounds), Number(values.seed)];
    const isGood = Number.isInteger(rounds) && rounds >= 1 && rounds <= MAX_ROUNDS && Number.isInteger(seed) && seed >= 0;
    return isGood ? { rounds, seed, siege: values.siege } : null;
  } catch {
    // parseArgs throws on what it does not know; the usage says the rest.
    return null;
  }
}
