import { randomBytes } from 'node:crypto';
import type Database from 'better-sqlite3';
import { EVENT_VERSION, type FloorEvent, type RecordedEvent } from '../../shared/floor/events.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { ID_BYTES, idFromBytes, idToBytes } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';
import { decodeBody, encodeBody } from './body-codec.ts';
import { canonicalJson } from './canonical-json.ts';
import { firstBroken, type KeptLink } from './chain-check.ts';
import { chainHash, hashText, ZERO_HASH } from './chain-hash.ts';
import { checkGroup } from './group-check.ts';
import { InternedNames } from './interned-names.ts';
import { JOURNAL_DATABASE } from './journal-schema.ts';
import { JournalStatements, type EventRow } from './journal-statements.ts';
import { JournalError, type Journal, type JournalEntry, type JournalHead } from './journal.ts';
import { openDatabase, openDatabaseReadOnly, preparedOrClosed } from './open-database.ts';
import { packOutcome, unpackOutcome } from './outcome-codec.ts';
import { journalFault } from './sqlite-faults.ts';
import { EVENT_UPCASTERS, liftedEvent, type Upcasters } from './upcasters.ts';

/** The file's name in the data folder. */
export const JOURNAL_FILE = 'journal.db';

export interface SqliteJournalOptions {
  /** For reading only, beside a server that may be writing; nothing can be appended. */
  readonly readOnly?: boolean;
  /** Where a new kitchen's id comes from. */
  readonly randomBytes?: (length: number) => Uint8Array;
  readonly upcasters?: Upcasters;
  /** The version under which events are kept; another than the program's own only to try the upcasters. */
  readonly eventVersion?: number;
  /** How many pages of 4 KiB the file may have, SQLite's own limit where none is given. Beyond it the disk counts as full. */
  readonly maxPages?: number;
}

/** The journal on disk: one SQLite file, synchronous inside. Faults of SQLite reject as JournalError, bugs as themselves. */
export class SqliteJournal implements Journal {
  readonly #database: Database.Database;
  readonly #statements: JournalStatements;
  readonly #names: InternedNames;
  readonly #options: Required<Pick<SqliteJournalOptions, 'randomBytes' | 'upcasters' | 'eventVersion'>>;
  readonly #appendAll: Database.Transaction<(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]) => JournalHead>;

  /** Opens the file, making it where there is none (not with `readOnly`). Throws OpenError. */
  constructor(path: string, { readOnly = false, maxPages, ...options }: SqliteJournalOptions = {}) {
    this.#options = { randomBytes, upcasters: EVENT_UPCASTERS, eventVersion: EVENT_VERSION, ...options };
    const database = (readOnly ? openDatabaseReadOnly : openDatabase)(path, JOURNAL_DATABASE);
    this.#database = database;
    [this.#statements, this.#names] = preparedOrClosed(database, () => {
      if (maxPages !== undefined) database.pragma(`max_page_count = ${maxPages}`);
      return [new JournalStatements(database), new InternedNames(database)] as const;
    });
    this.#appendAll = this.#database.transaction((...group) => this.#appendGroup(...group));
  }

  /** The kitchen's id, or null where the file holds none yet. */
  async knownKitchenId(): Promise<string | null> {
    return faultsNamed(() => this.#knownKitchen());
  }

  async kitchenId(): Promise<string> {
    return faultsNamed(() => {
      const known = this.#knownKitchen();
      if (known !== null) return known;
      const id = this.#options.randomBytes(ID_BYTES);
      this.#statements.insertKitchen(id);
      return idFromBytes(id);
    });
  }

  async head(kitchenId: string): Promise<JournalHead> {
    return faultsNamed(() => {
      const { sequence, hash } = this.#lastLink(this.#statements.kitchenNumber(kitchenId));
      return { kitchenId, sequence, hash: hashText(hash) };
    });
  }

  async append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    checkGroup(expectedSequence, group);
    try {
      const head = faultsNamed(() => this.#appendAll.immediate(kitchenId, expectedSequence, group));
      this.#names.keepFresh();
      return head;
    } catch (error) {
      this.#names.forgetFresh();
      throw error;
    }
  }

  async read(kitchenId: string, afterSequence: number, limit: number): Promise<readonly RecordedEvent[]> {
    return faultsNamed(() => {
      const rows = this.#statements.eventsAfter(this.#statements.kitchenNumber(kitchenId), afterSequence, limit);
      return rows.map((row, index) => {
        if (row.sequence !== afterSequence + 1 + index) throw damaged(afterSequence + 1 + index);
        return this.#recordedEvent(row);
      });
    });
  }

  async outcomeOf(kitchenId: string, commandId: string): Promise<Outcome | null> {
    return faultsNamed(() => {
      const row = this.#statements.outcome(this.#statements.kitchenNumber(kitchenId), idToBytes(commandId));
      return row === null ? null : unpackOutcome(decodeBody(row.outcome, this.#names), row.lastSequence);
    });
  }

  async hashAt(kitchenId: string, sequence: number): Promise<string | null> {
    return faultsNamed(() => {
      const hash = this.#statements.hashAt(this.#statements.kitchenNumber(kitchenId), sequence);
      return hash === null ? null : hashText(hash);
    });
  }

  /**
   * Computes the hashes of events `fromSequence` to `toSequence` anew (without them: all of the journal) and compares them with
   * those kept. Answers the first sequence number at which the event is missing, unreadable or not what was hashed; null where
   * all agree. Reads a page at a time and lets others run in between. What was cut off at the end, only a head kept elsewhere
   * can tell.
   */
  async verifyChain(kitchenId: string, fromSequence = 1, toSequence?: number): Promise<number | null> {
    const kitchen = faultsNamed(() => this.#statements.kitchenNumber(kitchenId));
    return firstBroken({
      kitchenId,
      fromSequence,
      toSequence: toSequence ?? faultsNamed(() => this.#lastLink(kitchen)).sequence,
      hashAt: (sequence) => (sequence === 0 ? ZERO_HASH : faultsNamed(() => this.#statements.hashAt(kitchen, sequence))),
      linksAfter: (sequence, limit) => this.#linksAfter(kitchen, kitchenId, sequence, limit),
    });
  }

  /**
   * Events with a sequence number above `afterSequence`, oldest first, at most `limit`, as they were kept and with all that their hashes
   * cover. Rejects with JournalError `journalFailed` where one is damaged.
   */
  async links(kitchenId: string, afterSequence: number, limit: number): Promise<readonly KeptLink[]> {
    const kitchen = faultsNamed(() => this.#statements.kitchenNumber(kitchenId));
    try {
      return this.#linksAfter(kitchen, kitchenId, afterSequence, limit);
    } catch (error) {
      throw new JournalError('journalFailed', `An event after ${afterSequence} is damaged.`, { cause: error });
    }
  }

  /** When the server took the events with a sequence number above `afterSequence`, in their order, at most `limit`. */
  async receivedAfter(kitchenId: string, afterSequence: number, limit: number): Promise<readonly number[]> {
    return faultsNamed(() => this.#statements.receivedAfter(this.#statements.kitchenNumber(kitchenId), afterSequence, limit));
  }

  async close(): Promise<void> {
    this.#database.close();
  }

  #appendGroup(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): JournalHead {
    const kitchen = this.#statements.kitchenNumber(kitchenId);
    let { sequence, hash } = this.#lastLink(kitchen);
    if (sequence !== expectedSequence) {
      throw new JournalError('sequenceConflict', `The journal ends at ${sequence}, not at ${expectedSequence}.`);
    }
    const version = this.#options.eventVersion;
    for (const { commandId, deviceId, receivedMs, events, outcome } of group) {
      const device = this.#names.numberOfText(deviceId);
      const packed = encodeBody(packOutcome(outcome, events.length === 0 ? null : sequence + events.length), this.#names);
      const command = this.#statements.insertCommand(idToBytes(commandId), kitchen, device, receivedMs, packed);
      if (command === null) throw new JournalError('commandRepeated', `Command ${commandId} is already kept.`);
      events.forEach((event, ordinal) => {
        sequence += 1;
        const text = canonicalJson(event);
        hash = chainHash(hash, { sequence, kitchenId, commandId, ordinal, deviceId, receivedMs, version, event }, text);
        const body = encodeBody(event, this.#names);
        assert(isSpelled(decodeBody(body, this.#names), text), 'what is kept can be read back');
        this.#statements.insertEvent(kitchen, sequence, command, ordinal, version, body, hash);
      });
    }
    return { kitchenId, sequence, hash: hashText(hash) };
  }

  #recordedEvent({ sequence, commandId, ordinal, device, version, body }: EventRow): RecordedEvent {
    let kept: unknown;
    let deviceId: string;
    try {
      kept = decodeBody(body, this.#names);
      deviceId = this.#idAt(device);
    } catch (error) {
      throw damaged(sequence, { cause: error });
    }
    // Checked on the way in; the shape is not checked again for each of a hundred thousand.
    const event = liftedEvent(kept, version, this.#options.upcasters) as FloorEvent;
    return { sequence, commandId, ordinal, deviceId, event };
  }

  #linksAfter(kitchen: number, kitchenId: string, afterSequence: number, limit: number): readonly KeptLink[] {
    return this.#statements.linksAfter(kitchen, afterSequence, limit).map((row): KeptLink => {
      const { sequence, commandId, ordinal, receivedMs, version, device, body, hash } = row;
      const event = decodeBody(body, this.#names);
      return { hash, link: { sequence, kitchenId, commandId, ordinal, deviceId: this.#idAt(device), receivedMs, version, event } };
    });
  }

  #knownKitchen(): string | null {
    const id = this.#statements.onlyKitchen();
    return id === null ? null : idFromBytes(id);
  }

  #lastLink(kitchen: number): { sequence: number; hash: Uint8Array } {
    return this.#statements.lastLink(kitchen) ?? { sequence: 0, hash: ZERO_HASH };
  }

  #idAt(number: number): string {
    const name = this.#names.at(number);
    assert(typeof name === 'string', 'a name that is an id');
    return name;
  }
}

/** Whether a value that was read back is, as canonical JSON, this text. */
function isSpelled(value: unknown, text: string): boolean {
  // Its properties come in their order, all but keys that are whole numbers: the engine's own writer is three times as fast.
  return JSON.stringify(value) === text || canonicalJson(value) === text;
}

function damaged(sequence: number, options?: ErrorOptions): JournalError {
  return new JournalError('journalFailed', `Event ${sequence} is missing or damaged.`, options);
}

function faultsNamed<Value>(work: () => Value): Value {
  try {
    return work();
  } catch (error) {
    throw journalFault(error);
  }
}
