import { parseArgs } from 'node:util';
import { atRest } from './at-rest.ts';
import { book } from './book.ts';
import { dueTimes } from './due-times.ts';
import { journalSize } from './journal-size.ts';
import { planCore } from './plan-core.ts';
import { planDay } from './plan-day.ts';
import { planLive } from './plan-live.ts';
import { recordsExport } from './records-export.ts';
import { records } from './records.ts';
import type { Line } from './report.ts';
import { saturday } from './saturday.ts';
import { screens } from './screens.ts';
import { secondStart, startOnLongJournal } from './starts.ts';
import { rush, tapToAll } from './taps.ts';
import { trace } from './trace.ts';

const BENCHES: ReadonlyMap<string, (rounds: number) => Promise<readonly Line[]>> = new Map([
  ['taps', tapToAll],
  ['rush', rush],
  ['start', startOnLongJournal],
  ['second-start', secondStart],
  ['rest', atRest],
  ['size', journalSize],
  ['due-times', dueTimes],
  ['screens', screens],
  ['book', book],
  ['plan-core', planCore],
  ['plan-day', planDay],
  ['plan-live', planLive],
  ['records-export', recordsExport],
  ['saturday', saturday],
  ['records', records],
  ['trace', trace],
]);
/** What takes many minutes is measured where it is named. */
const BY_NAME_ONLY: ReadonlySet<string> = new Set(['saturday', 'records']);

const ROUNDS = 5;
const MAX_ROUNDS = 50;
/** Exit code of a command line that cannot be understood, as shells use it. */
const USAGE = 2;

/**
 * `npm run bench`: measures the server and its pages on this machine and prints a line of JSON for each figure. `--only NAME`, as often as one
 * likes, for some of them; `--rounds N` for more or fewer rounds. Everything runs on the loopback address and ends with it.
 */
export async function main(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (typeof options === 'string') {
    process.stderr.write(`${options} Usage: npm run bench -- [--only ${[...BENCHES.keys()].join('|')}]… [--rounds N]\n`);
    return USAGE;
  }
  for (const [name, bench] of BENCHES) {
    if (options.only.length > 0 ? !options.only.includes(name) : BY_NAME_ONLY.has(name)) continue;
    for (const line of await bench(options.rounds)) process.stdout.write(`${JSON.stringify(line)}\n`);
  }
  return 0;
}

function readOptions(args: readonly string[]): { readonly only: readonly string[]; readonly rounds: number } | string {
  try {
    const { values } = parseArgs({ args: [...args], options: { only: { type: 'string', multiple: true }, rounds: { type: 'string' } } });
    const only = values.only ?? [];
    const unknown = only.find((name) => !BENCHES.has(name));
    if (unknown !== undefined) return `There is no bench "${unknown}".`;
    const rounds = values.rounds === undefined ? ROUNDS : Number(values.rounds);
    if (!(Number.isInteger(rounds) && rounds >= 1 && rounds <= MAX_ROUNDS)) return `--rounds takes a whole number from 1 to ${MAX_ROUNDS}.`;
    return { only, rounds };
  } catch (error) {
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return `${error.message}.`;
    throw error;
  }
}
