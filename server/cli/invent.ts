import { fileURLToPath } from 'node:url';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { firstOf, daysOn, isDate } from '../invent/calendar.ts';
import { keepHistory } from '../invent/keep-history.ts';
import { JournalError } from '../journal/journal.ts';
import { OpenError } from '../journal/open-error.ts';
import { dateIn } from '../main/planned-starts.ts';
import { readBakehouse } from '../main/read-bakehouse.ts';

const DEMO_FILE = resolve(fileURLToPath(new URL('../../../../', import.meta.url)), 'fixtures/harbour.json');
/** Two years take some minutes to make, and show nothing that one does not. */
const MOST_MONTHS = 24;
const USAGE = [
  `Usage: invent --data DIR [--months 3] [--seed 1] [--end YYYY-MM-DD]`,
  '  fills the data folder DIR, which has no journal yet, with months of invented work of the demo bakehouse, so that its records show',
  `  something. --months from 1 to ${MOST_MONTHS}; --seed a whole number, another one another history; --end the last day, yesterday where it is missing`,
].join('\n');
/** Exit code of a command line that cannot be understood, as shells use it. */
const BAD_USAGE = 2;

/** A line for people: the result on standard output, how far it is on standard error. */
export interface Told {
  readonly say: (line: string) => void;
  readonly tell: (text: string) => void;
}

/** Invents a history. Exit code 0 where it is kept, 1 where it is not, 2 for a command line that cannot be understood. */
export async function main(args: readonly string[], told: Told = toTerminal, nowMs = Date.now(), demoFile = DEMO_FILE): Promise<number> {
  const asked = readArguments(args);
  if (asked === null) {
    told.say(USAGE);
    return BAD_USAGE;
  }
  const read = await readBakehouse(demoFile);
  if (!read.ok) {
    told.say(`The demo bakehouse cannot be read: ${read.fault.map(({ path, message }) => `${path}: ${message}`).join('; ')}`);
    return 1;
  }
  const { file } = read.value;
  const yesterday = daysOn(dateIn(file.house.zone, nowMs), -1);
  const lastDate = asked.end ?? yesterday;
  if (lastDate > yesterday) {
    told.say(`A history ends before today: --end may be ${yesterday} at the latest.`);
    return 1;
  }
  const firstDate = firstOf(lastDate, asked.months);
  try {
    let events = 0;
    const kept = await keepHistory(asked.data, { file, firstDate, lastDate, seed: asked.seed }, (day) => {
      events = day.state.sequence;
      told.tell(`\r${day.date}: ${events} events`);
    });
    if (events > 0) told.tell('\n');
    if (!kept.ok) {
      told.say(kept.fault);
      return 1;
    }
    const { head, days, openDays } = kept.value;
    told.say(
      `${asked.data}: ${days} days from ${firstDate} to ${lastDate}, ${openDays} of them open, ${head.sequence} events, head ${head.hash}.`,
    );
    return 0;
  } catch (error) {
    if (!(error instanceof OpenError || error instanceof JournalError)) throw error;
    told.say(error.message);
    return 1;
  }
}

interface Asked {
  readonly data: string;
  readonly months: number;
  readonly seed: number;
  readonly end: string | null;
}

function readArguments(args: readonly string[]): Asked | null {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { data: { type: 'string' }, months: { type: 'string' }, seed: { type: 'string' }, end: { type: 'string' } },
    });
    const months = wholeNumber(values.months ?? '3');
    const seed = wholeNumber(values.seed ?? '1');
    const end = values.end ?? null;
    if (values.data === undefined || months === null || seed === null) return null;
    if (months < 1 || months > MOST_MONTHS || (end !== null && !isDate(end))) return null;
    return { data: resolve(values.data), months, seed, end };
  } catch (error) {
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return null;
    throw error;
  }
}

/** At most nine digits: every such number is a seed of its own. */
function wholeNumber(text: string): number | null {
  return /^\d{1,9}$/.test(text) ? Number(text) : null;
}

const toTerminal: Told = {
  say: (line) => void process.stdout.write(`${line}\n`),
  tell: (text) => void process.stderr.write(text),
};
