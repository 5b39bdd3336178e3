import { sign, type KeyObject } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import { canonicalJson } from '../journal/canonical-json.ts';
import { CHECK_PAGE_EVENTS } from '../journal/chain-check.ts';
import { hashText } from '../journal/chain-hash.ts';
import type { SqliteJournal } from '../journal/sqlite-journal.ts';
import { ArchiveError } from './archive-error.ts';
import { keyText } from './archive-key.ts';
import { MOST_ARCHIVE_BYTES, type ArchiveEnd, type ArchiveEvent, type ArchiveHead } from './archive-lines.ts';
import { checkArchive, type CheckedArchive } from './check-archive.ts';
import { Cut, monthSpan } from './month.ts';

/** Instants read from the journal at once. */
const PAGE_INSTANTS = 20_000;

/** An archive, and what it says of itself. */
export interface WrittenArchive extends CheckedArchive {
  readonly bytes: Uint8Array;
}

/**
 * One month of a journal, which a server may be writing, signed. It is checked as whoever gets it will check it: throws ArchiveError where an
 * event of the journal is not what was kept.
 */
export async function archiveOf(
  journal: SqliteJournal,
  kitchenId: string,
  month: string,
  zone: string,
  key: KeyObject,
): Promise<WrittenArchive> {
  const { fromMs, toMs } = monthSpan(month, zone);
  const { first, last } = await eventsWithin(journal, kitchenId, fromMs, toMs);
  const hashBefore = first === 1 ? '0'.repeat(64) : await journal.hashAt(kitchenId, first - 1);
  if (hashBefore === null) throw new ArchiveError(`Event ${first - 1} of the journal is missing.`);
  const head: ArchiveHead = {
    line: 'ovenward-archive',
    format: 1,
    kitchenId,
    month,
    zone,
    fromMs,
    toMs,
    firstSequence: first,
    lastSequence: last,
    hashBefore,
  };
  const chunks = [lineOf(head)];
  let bytes = chunks[0]?.length ?? 0;
  let hash = hashBefore;
  for (let after = first - 1; after < last;) {
    const links = await journal.links(kitchenId, after, Math.min(CHECK_PAGE_EVENTS, last - after));
    for (const { link, hash: own } of links) {
      const { kitchenId: _same, ...covered } = link;
      hash = hashText(own);
      const line = lineOf({ ...covered, hash } satisfies ArchiveEvent);
      chunks.push(line);
      bytes += line.length;
    }
    after = links.at(-1)?.link.sequence ?? last;
    if (bytes > MOST_ARCHIVE_BYTES)
      throw new ArchiveError(`${month} is larger than ${MOST_ARCHIVE_BYTES} bytes, the most that an archive may be.`);
    await setImmediate();
  }
  const body = Buffer.concat(chunks);
  const end: ArchiveEnd = {
    line: 'head',
    sequence: last,
    hash,
    publicKey: keyText(key),
    signature: sign(null, body, key).toString('base64url'),
  };
  const whole = Buffer.concat([body, lineOf(end)]);
  const checked = checkArchive(whole);
  if (!checked.ok) throw new ArchiveError(`The journal itself is damaged; nothing was written. ${checked.fault}`);
  return { ...checked.value, bytes: whole };
}

async function eventsWithin(
  journal: SqliteJournal,
  kitchenId: string,
  fromMs: number,
  toMs: number,
): Promise<{ readonly first: number; readonly last: number }> {
  const [begin, end] = [new Cut(fromMs), new Cut(toMs)];
  for (let after = 0; ;) {
    const instants = await journal.receivedAfter(kitchenId, after, PAGE_INSTANTS);
    for (const receivedMs of instants) {
      begin.take(receivedMs);
      end.take(receivedMs);
    }
    if (instants.length < PAGE_INSTANTS) return { first: begin.before + 1, last: end.before };
    after += instants.length;
    await setImmediate();
  }
}

function lineOf(value: unknown): Buffer {
  return Buffer.from(`${canonicalJson(value)}\n`, 'utf8');
}
