import { verify } from 'node:crypto';
import type { z } from 'zod';
import { accepted, refused, type Result } from '../../shared/result.ts';
import { canonicalJson } from '../journal/canonical-json.ts';
import { chainHash, hashText } from '../journal/chain-hash.ts';
import { keyOfText } from './archive-key.ts';
import { archiveEndSchema, archiveEventSchema, archiveHeadSchema, type ArchiveEnd, type ArchiveHead } from './archive-lines.ts';

const NEWLINE = 0x0a;

/** What an archive that is whole says of itself. */
export interface CheckedArchive {
  readonly head: ArchiveHead;
  readonly end: ArchiveEnd;
}

/**
 * Checks an archive with nothing but itself: every hash is computed anew from what its line says and followed from the first line's to the
 * last's, every line is spelled in the one way that there is, and the signature is one over all bytes before its line by the key beside it.
 * Whose key that is, only a copy from elsewhere tells. `hear` is given each event's number and hash. The fault is one sentence.
 */
export function checkArchive(bytes: Uint8Array, hear: (sequence: number, hash: string) => void = () => {}): Result<CheckedArchive, string> {
  const lines = linesOf(bytes);
  if (lines === null || lines.length < 2) return refused('This is no archive, or only the beginning of one: it does not end with a line.');
  const head = read(lines[0], archiveHeadSchema);
  if (head === null) return refused('Line 1 is not the first line of an archive as it was written.');
  const { kitchenId, firstSequence, lastSequence } = head;
  let previous: Uint8Array = Buffer.from(head.hashBefore, 'hex');
  for (let index = 1; index < lines.length - 1; index += 1) {
    const sequence = firstSequence + index - 1;
    const event = read(lines[index], archiveEventSchema);
    const which = `Line ${index + 1}, which should be event ${sequence}`;
    if (event === null) return refused(`${which}, is not as it was written.`);
    const { hash, ...link } = event;
    if (event.sequence !== sequence) return refused(`${which}, is event ${event.sequence}.`);
    previous = chainHash(previous, { ...link, kitchenId });
    if (hashText(previous) !== hash) return refused(`${which}, is not what was kept.`);
    hear(sequence, hash);
  }
  const last = firstSequence + lines.length - 3;
  if (last !== lastSequence) return refused(`The events end at ${last}; the first line says ${lastSequence}.`);
  return checkEnd(bytes, lines, head, hashText(previous));
}

function checkEnd(bytes: Uint8Array, lines: readonly Uint8Array[], head: ArchiveHead, hash: string): Result<CheckedArchive, string> {
  const last = lines.at(-1);
  const end = read(last, archiveEndSchema);
  if (end === null || last === undefined) return refused(`Line ${lines.length} is not the last line of an archive as it was written.`);
  if (end.sequence !== head.lastSequence || end.hash !== hash)
    return refused(`Line ${lines.length} names another head than the events before it have.`);
  const key = keyOfText(end.publicKey);
  const signature = Buffer.from(end.signature, 'base64url');
  const body = bytes.subarray(0, bytes.length - last.length - 1);
  if (key === null || signature.toString('base64url') !== end.signature || !verify(null, body, key, signature))
    return refused('The signature is not one of these lines by the key beside it: what the events do not cover was changed.');
  return accepted({ head, end });
}

/** The lines without their newlines; null where the last has none. */
function linesOf(bytes: Uint8Array): readonly Uint8Array[] | null {
  const lines: Uint8Array[] = [];
  let from = 0;
  for (let at = bytes.indexOf(NEWLINE); at !== -1; at = bytes.indexOf(NEWLINE, from)) {
    lines.push(bytes.subarray(from, at));
    from = at + 1;
  }
  return from === bytes.length ? lines : null;
}

/** What a line says; null where it says nothing of its kind, or says it in another spelling than the one it was written in. */
function read<Line>(line: Uint8Array | undefined, schema: z.ZodType<Line>): Line | null {
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(line);
    const said = schema.safeParse(JSON.parse(text));
    return said.success && canonicalJson(said.data) === text ? said.data : null;
  } catch {
    // No UTF-8, no JSON, or nested beyond all measure: whatever it is, it was not written here.
    return null;
  }
}
