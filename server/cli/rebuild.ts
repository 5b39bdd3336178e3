import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { lockFolder } from '../journal/folder-lock.ts';
import { JournalError } from '../journal/journal.ts';
import { OpenError } from '../journal/open-error.ts';
import { JOURNAL_FILE } from '../journal/sqlite-journal.ts';
import { LONG_PAGE_EVENTS, RecordsBuilder, throwAwayRecords } from '../records/records-builder.ts';

const USAGE = [
  'Usage: rebuild --data DIR',
  '  makes the records of the data folder DIR anew from its journal; no server may be running on it',
].join('\n');
/** Exit code of a command line that cannot be understood, as shells use it. */
const BAD_USAGE = 2;

/**
 * Throws the records of a data folder away and makes them anew. Says on standard error how far it is, and one line at the end. Exit code
 * 0 where they were made, 1 where they could not be, 2 for a command line that cannot be understood.
 */
export async function main(
  args: readonly string[],
  say: (line: string) => void = sayOnOutput,
  nowMs = (): number => performance.now(),
): Promise<number> {
  const folder = dataFolder(args);
  if (folder === null) {
    say(USAGE);
    return BAD_USAGE;
  }
  if (!existsSync(join(folder, JOURNAL_FILE))) {
    say(`There is no journal in ${folder}.`);
    return 1;
  }
  try {
    const lock = lockFolder(folder);
    try {
      return await rebuild(folder, say, nowMs);
    } finally {
      lock.release();
    }
  } catch (error) {
    if (!(error instanceof OpenError || error instanceof JournalError)) throw error;
    say(error.message);
    return 1;
  }
}

async function rebuild(folder: string, say: (line: string) => void, nowMs: () => number): Promise<number> {
  const startMs = nowMs();
  throwAwayRecords(folder);
  const builder = await RecordsBuilder.open(folder);
  if (builder === null) {
    say('Nothing is kept yet: there is nothing to make records of.');
    return 0;
  }
  const { sequence } = await builder.catchUp((at) => void process.stderr.write(`${at.sequence} of ${at.of} events\n`), LONG_PAGE_EVENTS);
  await builder.close();
  say(`Records of ${sequence} events were made in ${((nowMs() - startMs) / 1000).toFixed(1)} s.`);
  return 0;
}

function dataFolder(args: readonly string[]): string | null {
  try {
    return parseArgs({ args: [...args], options: { data: { type: 'string' } } }).values.data ?? null;
  } catch (error) {
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return null;
    throw error;
  }
}

function sayOnOutput(line: string): void {
  process.stdout.write(`${line}\n`);
}
