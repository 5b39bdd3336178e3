import { existsSync, readFileSync, statSync } from 'node:fs';
import { rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { ArchiveError } from '../archive/archive-error.ts';
import { archiveKey, fingerprintOf, keyOfText, keyText, publicKeyAt, publicPem } from '../archive/archive-key.ts';
import { MOST_ARCHIVE_BYTES } from '../archive/archive-lines.ts';
import { checkArchive, type CheckedArchive } from '../archive/check-archive.ts';
import { isMonth } from '../archive/month.ts';
import { archiveOf } from '../archive/write-archive.ts';
import { flush } from '../journal/flush.ts';
import { JournalError } from '../journal/journal.ts';
import { OpenError } from '../journal/open-error.ts';
import { SNAPSHOT_FILE } from '../journal/snapshot-file.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import { loadState } from '../main/load-state.ts';

const USAGE = [
  'Usage: archive --data DIR --month YYYY-MM --to FILE',
  '  writes that month of the journal in the data folder DIR into one signed file, and the key to check it with beside it',
  '       archive --verify FILE [--key PUBLIC.pem] [--data DIR]',
  '  says whether an archive is what was written, by that key, and what the journal in DIR has',
].join('\n');
/** Exit code of a command line that cannot be understood, as shells use it. */
const BAD_USAGE = 2;

type Asked =
  | { readonly what: 'write'; readonly data: string; readonly month: string; readonly to: string }
  | { readonly what: 'verify'; readonly file: string; readonly key: string | null; readonly data: string | null };

/**
 * Writes a month of the journal as a signed file, or checks one; a server may be running on the folder. Exit code 0 where it was written or is
 * whole, 1 where it could not be or is not, 2 for a command line that cannot be understood.
 */
export async function main(args: readonly string[], say: (line: string) => void = sayOnOutput): Promise<number> {
  const asked = readArguments(args);
  if (asked === null) {
    say(USAGE);
    return BAD_USAGE;
  }
  try {
    say(await (asked.what === 'write' ? write(asked.data, asked.month, asked.to) : verified(asked.file, asked.key, asked.data)));
    return 0;
  } catch (error) {
    if (!(error instanceof ArchiveError || error instanceof OpenError || error instanceof JournalError)) throw error;
    say(error.message);
    return 1;
  }
}

async function write(data: string, month: string, to: string): Promise<string> {
  for (const path of [to, keyBeside(to)]) {
    if (existsSync(path)) throw new ArchiveError(`${path} is there already; nothing is written over it.`);
  }
  return await withJournal(data, async (journal, kitchenId) => {
    const { state } = await loadState(journal, kitchenId, join(data, SNAPSHOT_FILE), { warn: () => {} });
    const key = await archiveKey(data);
    const archive = await archiveOf(journal, kitchenId, month, state.house?.document.zone ?? 'UTC', key);
    await writeWhole(keyBeside(to), publicPem(key));
    await writeWhole(to, archive.bytes);
    const goesOn =
      archive.head.lastSequence === state.sequence ? ' Nothing is kept after it yet: what is still to come of the month is not in it.' : '';
    return `${to}: ${told(archive)} Key ${fingerprintOf(key)}.${goesOn}`;
  });
}

async function verified(file: string, keyFile: string | null, data: string | null): Promise<string> {
  if (!existsSync(file)) throw new ArchiveError(`There is no ${file}.`);
  if (statSync(file).size > MOST_ARCHIVE_BYTES) throw new ArchiveError(`${file} is larger than any archive.`);
  const key = keyFile === null ? null : publicKeyAt(keyFile);
  const hashes: [sequence: number, hash: string][] = [];
  const checked = checkArchive(readFileSync(file), (...event) => hashes.push(event));
  if (!checked.ok) throw new ArchiveError(`${file}: ${checked.fault}`);
  const { head, end } = checked.value;
  const signedBy = keyOfText(end.publicKey);
  if (signedBy === null) throw new ArchiveError(`${file}: it names no key.`);
  if (key !== null && keyText(key) !== end.publicKey)
    throw new ArchiveError(`${file}: it is signed by another key, ${fingerprintOf(signedBy)}, not by ${fingerprintOf(key)}.`);
  if (data !== null) await compare(data, head.kitchenId, [[head.firstSequence - 1, head.hashBefore], ...hashes], file);
  const whose = key === null ? `signed by ${fingerprintOf(signedBy)}: compare it, or say --key` : 'signed by that key';
  return `${file}: ${told(checked.value)} Whole, and ${whose}${data === null ? '' : '; the journal has the same'}.`;
}

/** Throws where the journal of a folder has another hash than an archive at any of its events. */
async function compare(
  data: string,
  archived: string,
  hashes: readonly (readonly [sequence: number, hash: string])[],
  file: string,
): Promise<void> {
  await withJournal(data, async (journal, kitchenId) => {
    if (kitchenId !== archived) throw new ArchiveError(`${file} is of another kitchen than ${data}.`);
    for (const [sequence, hash] of hashes) {
      if (sequence === 0) continue;
      const kept = await journal.hashAt(kitchenId, sequence);
      if (kept === null) throw new ArchiveError(`${file} is whole, but the journal in ${data} has no event ${sequence}.`);
      if (kept !== hash) throw new ArchiveError(`${file} is whole, but the journal in ${data} has another event ${sequence}.`);
    }
  });
}

async function withJournal<Value>(data: string, use: (journal: SqliteJournal, kitchenId: string) => Promise<Value>): Promise<Value> {
  const journal = new SqliteJournal(join(data, JOURNAL_FILE), { readOnly: true });
  try {
    const kitchenId = await journal.knownKitchenId();
    if (kitchenId === null) throw new ArchiveError(`Nothing is kept in ${data} yet.`);
    return await use(journal, kitchenId);
  } finally {
    await journal.close();
  }
}

function told({ head: { month, zone, firstSequence, lastSequence }, end: { hash } }: CheckedArchive): string {
  const what = lastSequence < firstSequence ? `no event after ${lastSequence}` : `events ${firstSequence} to ${lastSequence}`;
  return `${month} (${zone}), ${what}, head ${hash}.`;
}

/** Where the public part of the key goes. */
function keyBeside(file: string): string {
  return `${file}.pem`;
}

/** Whole or not at all. */
async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const draft = `${path}.unfinished`;
  try {
    await writeFile(draft, content, { mode: 0o644 });
    await flush(draft);
    await rename(draft, path);
    await flush(dirname(path));
  } catch (error) {
    await rm(draft, { force: true });
    throw new ArchiveError(`${path} cannot be written: ${error instanceof Error ? error.message : String(error)}.`, { cause: error });
  }
}

function readArguments(args: readonly string[]): Asked | null {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        data: { type: 'string' },
        month: { type: 'string' },
        to: { type: 'string' },
        verify: { type: 'string' },
        key: { type: 'string' },
      },
    });
    const { data, month, to, verify, key } = values;
    if (verify !== undefined) {
      if (month !== undefined || to !== undefined) return null;
      return {
        what: 'verify',
        file: resolve(verify),
        key: key === undefined ? null : resolve(key),
        data: data === undefined ? null : resolve(data),
      };
    }
    if (data === undefined || month === undefined || to === undefined || key !== undefined || !isMonth(month)) return null;
    return { what: 'write', data: resolve(data), month, to: resolve(to) };
  } catch (error) {
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return null;
    throw error;
  }
}

function sayOnOutput(line: string): void {
  process.stdout.write(`${line}\n`);
}
