import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { hashText, ZERO_HASH } from '../journal/chain-hash.ts';
import { JournalError } from '../journal/journal.ts';
import { OpenError } from '../journal/open-error.ts';
import { readSnapshotHead, SNAPSHOT_FILE } from '../journal/snapshot-file.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';

const USAGE = 'Usage: verify --data DIR   checks every hash of the journal in the data folder DIR';
/** Exit code of a command line that cannot be understood, as shells use it. */
const BAD_USAGE = 2;

/**
 * Checks the whole journal of a data folder, reading only; a server may be running on it. Says one line: the last sequence
 * number and its hash, or the first broken one. Exit code 0 where all is whole, 1 where it is not or cannot be opened, 2 for a
 * command line that cannot be understood.
 */
export async function main(args: readonly string[], say: (line: string) => void = sayOnOutput): Promise<number> {
  const folder = dataFolder(args);
  if (folder === null) {
    say(USAGE);
    return BAD_USAGE;
  }
  try {
    const { isWhole, line } = await verifyFolder(folder);
    say(line);
    return isWhole ? 0 : 1;
  } catch (error) {
    if (!(error instanceof OpenError || error instanceof JournalError)) throw error;
    say(error.message);
    return 1;
  }
}

async function verifyFolder(folder: string): Promise<{ isWhole: boolean; line: string }> {
  const journal = new SqliteJournal(join(folder, JOURNAL_FILE), { readOnly: true });
  try {
    const kitchenId = await journal.knownKitchenId();
    if (kitchenId === null) return { isWhole: true, line: `sequence 0, head ${hashText(ZERO_HASH)}: nothing is kept yet.` };
    // Before the head of the journal: whatever the snapshot knows, the journal knew first.
    const snapshot = await readSnapshotHead(join(folder, SNAPSHOT_FILE));
    const head = await journal.head(kitchenId);
    const broken = await journal.verifyChain(kitchenId, 1, head.sequence);
    if (broken !== null)
      return { isWhole: false, line: `Broken at sequence ${broken} of ${head.sequence}: the event is not what was kept.` };
    if (snapshot?.kitchenId === kitchenId && (await journal.hashAt(kitchenId, snapshot.sequence)) !== snapshot.hash) {
      return snapshot.sequence > head.sequence
        ? { isWhole: false, line: `Broken at sequence ${head.sequence + 1}: the snapshot knows events up to ${snapshot.sequence}.` }
        : { isWhole: false, line: `Broken at sequence ${snapshot.sequence} of ${head.sequence}: the snapshot has another hash for it.` };
    }
    return { isWhole: true, line: `sequence ${head.sequence}, head ${head.hash}: every hash agrees.` };
  } finally {
    await journal.close();
  }
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
