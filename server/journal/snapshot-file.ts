import { createHash } from 'node:crypto';
import { open, readFile, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { z } from 'zod';
import { STATE_VERSION, type FloorState } from '../../shared/floor/state.ts';
import { idSchema } from '../../shared/ids.ts';
import { accepted, assert, refused, type Result } from '../../shared/result.ts';
import { flush } from './flush.ts';
import type { Journal } from './journal.ts';

/** The file's name in the data folder. */
export const SNAPSHOT_FILE = 'snapshot.json';

/** The state up to one event, kept beside the journal so that starting is faster. It can be thrown away at any time. */
export interface Snapshot {
  readonly kitchenId: string;
  readonly sequence: number;
  /** Hash of the event with that sequence number, hex. */
  readonly hash: string;
  readonly state: FloorState;
}

/**
 * Why a snapshot is not believed. `journalDisagrees` deserves a warning, the others do not: either the snapshot or, if the
 * journal ends before it, the journal's end is lost.
 */
export type SnapshotFault = 'absent' | 'torn' | 'otherStateVersion' | 'otherKitchen' | 'journalDisagrees';

const fileSchema = z.strictObject({
  stateVersion: z.number().int(),
  kitchenId: idSchema,
  sequence: z.number().int().min(1),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  stateHash: z.string(),
  state: z.custom<FloorState>((value) => typeof value === 'object' && value !== null),
});

/**
 * Writes a snapshot, whole or not at all: to a file beside, flushed, then renamed. One at a time. Rejects with the file
 * system's error, the snapshot before still in place.
 */
export async function writeSnapshot(path: string, snapshot: Snapshot): Promise<void> {
  const { kitchenId, sequence, hash, state } = snapshot;
  assert(state.sequence === sequence, `a state of ${state.sequence} in a snapshot of ${sequence}`);
  const file = { stateVersion: state.stateVersion, kitchenId, sequence, hash, stateHash: stateHash(state), state };
  const draft = `${path}.tmp`;
  try {
    await writeFlushed(draft, `${JSON.stringify(file)}\n`);
    await rename(draft, path);
  } catch (error) {
    await rm(draft, { force: true });
    throw error;
  }
  // So that the rename itself outlives a power cut.
  await flush(dirname(path));
}

/**
 * Reads the snapshot of a kitchen. It is believed only where it is whole, of this program's version of the state, and where
 * the journal holds the very event that it ends with.
 */
export async function readSnapshot(
  path: string,
  journal: Pick<Journal, 'hashAt'>,
  kitchenId: string,
  stateVersion: number = STATE_VERSION,
): Promise<Result<Snapshot, SnapshotFault>> {
  const text = await textOf(path);
  if (text === null) return refused('absent');
  const parsed = fileSchema.safeParse(jsonOf(text));
  if (!parsed.success) return refused('torn');
  const { stateVersion: version, stateHash: keptHash, ...snapshot } = parsed.data;
  if (version !== stateVersion) return refused('otherStateVersion');
  if (keptHash !== stateHash(snapshot.state) || snapshot.state.sequence !== snapshot.sequence) return refused('torn');
  if (snapshot.kitchenId !== kitchenId) return refused('otherKitchen');
  if ((await journal.hashAt(kitchenId, snapshot.sequence)) !== snapshot.hash) return refused('journalDisagrees');
  return accepted(snapshot);
}

/** Up to where a snapshot goes, whatever its state's version: a head of the chain that is kept outside the journal. */
export async function readSnapshotHead(path: string): Promise<Omit<Snapshot, 'state'> | null> {
  const text = await textOf(path);
  const parsed = fileSchema.safeParse(text === null ? undefined : jsonOf(text));
  if (!parsed.success) return null;
  const { kitchenId, sequence, hash } = parsed.data;
  return { kitchenId, sequence, hash };
}

/** SHA-256 of the state's JSON text, which parsing and writing again does not change. */
function stateHash(state: FloorState): string {
  return createHash('sha256').update(JSON.stringify(state), 'utf8').digest('hex');
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

async function textOf(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

async function writeFlushed(path: string, text: string): Promise<void> {
  const handle = await open(path, 'w', 0o600);
  try {
    await handle.writeFile(text, 'utf8');
    await handle.sync();
  } finally {
    await handle.close();
  }
}
