import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { readBakehouseFile, type BakehouseFile, type FileFault } from '../../shared/documents/bakehouse-file.ts';
import { ID_BYTES, idFromBytes } from '../../shared/ids.ts';
import { accepted, refused, type Result } from '../../shared/result.ts';
import { parseSafely } from '../http/safe-json.ts';
import { isKnownZone } from './planned-starts.ts';

/** Largest bakehouse file, in bytes. */
const MAX_FILE_BYTES = 20 * 1024 * 1024;

export interface ReadBakehouse {
  readonly file: BakehouseFile;
  /** SHA-256 of the file's bytes. */
  readonly digest: Uint8Array;
}

/** Reads a bakehouse file from disk; every fault with its path. */
export async function readBakehouse(path: string): Promise<Result<ReadBakehouse, readonly FileFault[]>> {
  let bytes: Buffer;
  try {
    bytes = await readFile(path);
  } catch (error) {
    return wholeFile(`it cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (bytes.length > MAX_FILE_BYTES) return wholeFile(`it is larger than ${MAX_FILE_BYTES} bytes`);
  let value: unknown;
  try {
    value = parseSafely(bytes.toString('utf8'));
  } catch (error) {
    return wholeFile(`it is not JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
  const read = readBakehouseFile(value);
  if (!read.ok) return read;
  if (!isKnownZone(read.value.house.zone))
    return refused([{ path: 'house.zone', message: `"${read.value.house.zone}" is no time zone; write one such as "Europe/Lisbon"` }]);
  return accepted({ file: read.value, digest: createHash('sha256').update(bytes).digest() });
}

function wholeFile(message: string): Result<never, readonly FileFault[]> {
  return refused([{ path: '(the whole file)', message }]);
}

/** The id of the command that brings a file in for a date: the same file for the same date is the same command. */
export function commandIdOf(digest: Uint8Array, serviceDate: string): string {
  return idFromBytes(createHash('sha256').update(digest).update(serviceDate).digest().subarray(0, ID_BYTES));
}
