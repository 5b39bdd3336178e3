import { createHash, randomBytes } from 'node:crypto';
import { SqliteError } from 'better-sqlite3';
import type Database from 'better-sqlite3';
import { z } from 'zod';
import { accessRoleSchema, type AccessRole } from '../../shared/wire/joining.ts';
import { ID_BYTES, idFromBytes, idToBytes, isId } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';
import { openDatabase } from '../journal/open-database.ts';
import { DEVICES_DATABASE } from './devices-schema.ts';

/** Devices that are remembered; beyond that, the one not seen for longest is forgotten. */
export const MAX_DEVICES = 1000;
/** A device that is seen again sooner than this is not written again, in ms. */
export const TOUCH_EVERY_MS = 60_000;

/** A token is 256 random bits. */
const TOKEN_BYTES = 32;
/** Their base64url (RFC 4648 section 5), without padding. */
const TOKEN_PATTERN = /^[\w-]{43}$/;

/** What a device is; `script` is the one on which commands by http are booked that come with no cookie. */
export type DeviceKind = 'wall' | 'phone' | 'script';

/** A wall or a phone, as the house knows it. */
export interface KnownDevice {
  readonly id: string;
  readonly kind: DeviceKind;
  /** As it was introduced; else its kind and number, such as `phone 1`. */
  readonly name: string;
  /** Where it stands. */
  readonly stationId: string | null;
  readonly firstSeenMs: number;
  readonly lastSeenMs: number;
  /** What it may do; null where it was not let in, or was shut out. */
  readonly role: AccessRole | null;
  /** It stands on the server's own machine, or somebody let it in by more than six digits: it may show the picture that lets others in. */
  readonly isVouched: boolean;
}

/** Somebody who is let in. */
export interface Newcomer {
  /** What the browser was till now; null for a new device. */
  readonly before: KnownDevice | null;
  readonly kind: 'wall' | 'phone';
  readonly role: AccessRole;
  readonly isVouched: boolean;
  readonly isSecure: boolean;
  /** Null: as it is called already. */
  readonly name: string | null;
  readonly nowMs: number;
}

export interface DevicesOptions {
  /** Where ids come from. */
  readonly randomBytes?: (length: number) => Uint8Array;
  /** Where tokens come from: 43 characters of base64url. */
  readonly newToken?: (deviceId: string) => string;
  readonly maxDevices?: number;
  /** A device was forgotten for a newer one. */
  readonly onForgotten?: (deviceId: string) => void;
  /** When a device was last there could not be kept: nothing else depends on it. */
  readonly onTouchFault?: (error: Error) => void;
}

const rowSchema = z.tuple([
  z.instanceof(Uint8Array),
  z.enum(['wall', 'phone', 'script']),
  z.number().int(),
  z.string().nullable(),
  z.string().nullable(),
  z.number().int(),
  z.number().int(),
  accessRoleSchema.nullable(),
  z.number().int(),
]);

const COLUMNS = 'id, kind, number, name, station, first_seen_ms, last_seen_ms, role, vouched';

/**
 * Walls and phones, in a file of their own. Their names never get into the journal, which cannot forget; here they can be
 * erased. Synchronous; faults of SQLite throw as they are.
 */
export class Devices {
  readonly #database: Database.Database;
  readonly #randomBytes: (length: number) => Uint8Array;
  readonly #newToken: (deviceId: string) => string;
  readonly #maxDevices: number;
  readonly #onForgotten: (deviceId: string) => void;
  readonly #onTouchFault: (error: Error) => void;

  /** Opens the file, making it where there is none. Throws OpenError. */
  constructor(path: string, options: DevicesOptions = {}) {
    this.#database = openDatabase(path, DEVICES_DATABASE);
    // What is deleted or written over is wiped, not only given up.
    this.#database.pragma('secure_delete = ON');
    this.#randomBytes = options.randomBytes ?? randomBytes;
    this.#newToken = options.newToken ?? (() => Buffer.from(randomBytes(TOKEN_BYTES)).toString('base64url'));
    this.#maxDevices = options.maxDevices ?? MAX_DEVICES;
    this.#onForgotten = options.onForgotten ?? (() => {});
    this.#onTouchFault = options.onTouchFault ?? (() => {});
  }

  /** Takes in a new device under a random id, numbered on within its kind. */
  create(kind: DeviceKind, nowMs: number): KnownDevice {
    const id = this.#randomBytes(ID_BYTES);
    let forgotten: readonly Uint8Array[] = [];
    this.#database.transaction(() => {
      this.#database
        .prepare(
          `INSERT INTO devices (${COLUMNS}) VALUES (@id, @kind, (SELECT coalesce(max(number), 0) + 1 FROM devices WHERE kind = @kind), NULL, NULL, @nowMs, @nowMs, NULL, 0)`,
        )
        .run({ id, kind, nowMs });
      // Never the new one, whatever the clock says; whoever is let in after who is not, and those that manage the kitchen last.
      forgotten = this.#database
        .prepare<[Uint8Array, number]>(
          `DELETE FROM devices WHERE id IN (SELECT id FROM devices WHERE id <> ? ORDER BY role IS NOT NULL, role IS 'manage', last_seen_ms LIMIT max(0, (SELECT count(*) FROM devices) - ?)) RETURNING id`,
        )
        .pluck()
        .all(id, this.#maxDevices) as Uint8Array[];
    })();
    for (const each of forgotten) this.#onForgotten(idFromBytes(each));
    return this.#known(id);
  }

  /** The device of that id, or null. A text that is no id names no device: it may come from anybody's cookie. */
  find(id: string): KnownDevice | null {
    return isId(id) ? this.#read(idToBytes(id)) : null;
  }

  /**
   * The device that holds a token, or null: over TLS one that was given over TLS, and over plain http one that was given there. Found by the
   * token's hash, so that neither the file nor the time it takes gives a token away.
   */
  findByToken(token: string, isSecure = false): KnownDevice | null {
    if (!TOKEN_PATTERN.test(token)) return null;
    const row: unknown = this.#database
      .prepare<[Uint8Array]>(`SELECT ${COLUMNS} FROM devices WHERE token_hash = ?`)
      .raw()
      .get(hashOf(token, isSecure));
    return row === undefined ? null : deviceOf(row);
  }

  /** Gives a device a role and a new token, which is kept only as its SHA-256; a token that it had is void. Throws where there is no such device. */
  letIn(id: string, role: AccessRole, { isSecure = false, isVouched = false }: { isSecure?: boolean; isVouched?: boolean } = {}): string {
    const token = this.#newToken(id);
    assert(TOKEN_PATTERN.test(token), 'a token is 43 characters of base64url');
    const { changes } = this.#database
      .prepare('UPDATE devices SET role = ?, token_hash = ?, secure = ?, vouched = ? WHERE id = ?')
      .run(role, hashOf(token, isSecure), Number(isSecure), Number(isVouched), idToBytes(id));
    assert(changes === 1, `there is no device ${id}`);
    return token;
  }

  /** Lets somebody in: as a whole or not at all. */
  admit({ before, kind, role, isVouched, isSecure, name, nowMs }: Newcomer): { readonly device: KnownDevice; readonly token: string } {
    const admitted = this.#database.transaction(() => {
      const { id, stationId } = before ?? this.create(kind, nowMs);
      const token = this.letIn(id, role, { isSecure, isVouched });
      if (name !== null) this.#setName(id, name, stationId);
      return { device: this.#known(idToBytes(id)), token };
    })();
    if (before !== null && name !== null && before.name !== name) this.#wipeLog();
    return admitted;
  }

  /** Changes what a device that was let in may do: somebody who manages the kitchen vouches for it. */
  setRole(id: string, role: AccessRole): void {
    this.#database.prepare('UPDATE devices SET role = ?, vouched = 1 WHERE id = ? AND role IS NOT NULL').run(role, idToBytes(id));
  }

  /** Takes a device's role and token, and erases its name. */
  shutOut(id: string): void {
    this.#database.prepare('UPDATE devices SET role = NULL, token_hash = NULL, vouched = 0 WHERE id = ?').run(idToBytes(id));
    this.eraseName(id);
  }

  /** How many devices may manage the kitchen; of those that come over TLS alone, where nobody else counts. */
  managers(isSecureOnly = false): number {
    const count: unknown = this.#database
      .prepare<[number]>("SELECT count(*) FROM devices WHERE role = 'manage' AND secure >= ?")
      .pluck()
      .get(Number(isSecureOnly));
    assert(typeof count === 'number', 'a count is a number');
    return count;
  }

  /** Sets what the device is called (null: its kind and number) and where it stands. Null where there is no such device. */
  introduce(id: string, name: string | null, stationId: string | null): KnownDevice | null {
    const before = this.find(id);
    if (before === null) return null;
    this.#setName(id, name, stationId);
    if (before.name !== name) this.#wipeLog();
    return this.find(id);
  }

  /** The device is there. Call it as often as it is heard: it is written at most once in TOUCH_EVERY_MS. */
  touch(id: string, nowMs: number): void {
    const device = this.find(id);
    if (device === null || Math.abs(nowMs - device.lastSeenMs) < TOUCH_EVERY_MS) return;
    try {
      this.#database.prepare('UPDATE devices SET last_seen_ms = ? WHERE id = ?').run(nowMs, idToBytes(id));
    } catch (error) {
      // A disk that is full must not keep out who only reads.
      if (!(error instanceof SqliteError)) throw error;
      this.#onTouchFault(error);
    }
  }

  /** All devices, walls first, by number. */
  all(): readonly KnownDevice[] {
    const rows = this.#database.prepare<[]>(`SELECT ${COLUMNS} FROM devices ORDER BY kind DESC, number`).raw().all();
    return rows.map(deviceOf);
  }

  /** Erases a device's name from the file, so that its bytes are gone. What the journal knows is only the id. */
  eraseName(id: string): void {
    const device = this.find(id);
    if (device !== null) this.introduce(id, null, device.stationId);
  }

  close(): void {
    this.#database.close();
  }

  #setName(id: string, name: string | null, stationId: string | null): void {
    this.#database.prepare('UPDATE devices SET name = ?, station = ? WHERE id = ?').run(name, stationId, idToBytes(id));
  }

  /** Folds the write-ahead log into the file and empties it: old pages in it would still hold the name. */
  #wipeLog(): void {
    this.#database.pragma('wal_checkpoint(TRUNCATE)');
  }

  #known(id: Uint8Array): KnownDevice {
    const device = this.#read(id);
    if (device === null) throw new Error(`device ${idFromBytes(id)} was not kept`);
    return device;
  }

  #read(id: Uint8Array): KnownDevice | null {
    const row: unknown = this.#database.prepare<[Uint8Array]>(`SELECT ${COLUMNS} FROM devices WHERE id = ?`).raw().get(id);
    return row === undefined ? null : deviceOf(row);
  }
}

/** A token has as many random bits as its hash: nothing could be tried out faster than the token itself, so one pass of SHA-256 will do. */
function hashOf(token: string, isSecure: boolean): Uint8Array {
  // What went over the wire in the clear once is worth nothing over TLS.
  return createHash('sha256')
    .update(`${isSecure ? 'tls' : 'plain'}:${token}`, 'utf8')
    .digest();
}

function deviceOf(row: unknown): KnownDevice {
  const [id, kind, number, name, stationId, firstSeenMs, lastSeenMs, role, vouched] = rowSchema.parse(row);
  return {
    id: idFromBytes(id),
    kind,
    name: name ?? `${kind} ${number}`,
    stationId,
    firstSeenMs,
    lastSeenMs,
    role,
    isVouched: vouched === 1,
  };
}
