import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { BackupError } from '../backup/make-backup.ts';
import { backupAt, restore } from '../backup/restore.ts';
import { JournalError } from '../journal/journal.ts';
import { OpenError } from '../journal/open-error.ts';

const USAGE = [
  'Usage: restore --from BACKUP --data DIR [--over-newer]',
  '  puts a backup back into the data folder DIR, on which no server runs; BACKUP is one backup, or a folder of them (the newest counts)',
].join('\n');
/** Exit code of a command line that cannot be understood, as shells use it. */
const BAD_USAGE = 2;

/** Puts a backup back. Exit code 0 where it was, 1 where it was not (nothing is changed then), 2 for a command line that cannot be understood. */
export async function main(args: readonly string[], say: (line: string) => void = sayOnOutput, nowMs = Date.now()): Promise<number> {
  const asked = readArguments(args);
  if (asked === null) {
    say(USAGE);
    return BAD_USAGE;
  }
  const { from, data, overNewer } = asked;
  const backup = backupAt(from);
  if (backup === null) {
    say(`There is no backup in ${from}.`);
    return 1;
  }
  try {
    const restored = await restore(backup, data, nowMs, overNewer);
    if (!restored.ok) {
      say(restored.fault);
      return 1;
    }
    say(`${data} is as it was at ${new Date(backup.madeMs).toISOString()}, event ${backup.sequence}.`);
    const { asideFolder } = restored.value;
    if (asideFolder !== null) say(`What was there is kept in ${asideFolder}.`);
    return 0;
  } catch (error) {
    if (!(error instanceof OpenError || error instanceof JournalError || error instanceof BackupError)) throw error;
    say(error.message);
    return 1;
  }
}

function readArguments(args: readonly string[]): { readonly from: string; readonly data: string; readonly overNewer: boolean } | null {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { from: { type: 'string' }, data: { type: 'string' }, 'over-newer': { type: 'boolean' } },
    });
    if (values.from === undefined || values.data === undefined) return null;
    return { from: resolve(values.from), data: resolve(values.data), overNewer: values['over-newer'] === true };
  } catch (error) {
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return null;
    throw error;
  }
}

function sayOnOutput(line: string): void {
  process.stdout.write(`${line}\n`);
}
