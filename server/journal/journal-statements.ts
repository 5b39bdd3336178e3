import type Database from 'better-sqlite3';
import { idToBytes } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';

/** An event as it lies in the table, with what its command says of it. */
export interface EventRow {
  readonly sequence: number;
  /** Number of its command. */
  readonly command: number;
  readonly ordinal: number;
  readonly version: number;
  readonly body: Uint8Array;
  readonly commandId: string;
  /** Number of the name that is the device's id. */
  readonly device: number;
}

/** An event with what its hash covers beside. */
export interface LinkRow extends EventRow {
  readonly receivedMs: number;
  readonly hash: Uint8Array;
}

// Bytes come as hex: tried on 100 000 events, a text and a buffer cut from Node's pool cost half of what a buffer by the driver does.
const EVENT_COLUMNS = 'e.sequence, e.command, e.ordinal, e.version, hex(e.body), hex(c.id), c.device';
const EVENTS_AFTER =
  'FROM events e JOIN commands c ON c.number = e.command WHERE e.kitchen = ? AND e.sequence > ? ORDER BY e.sequence LIMIT ?';

/** Every statement of the journal, prepared once; rows are checked as they come. */
export class JournalStatements {
  readonly #onlyKitchen: Database.Statement<[]>;
  readonly #insertKitchen: Database.Statement<[Uint8Array]>;
  readonly #kitchenNumber: Database.Statement<[Uint8Array]>;
  readonly #lastLink: Database.Statement<[number]>;
  readonly #hashAt: Database.Statement<[number, number]>;
  readonly #events: Database.Statement<[number, number, number]>;
  readonly #links: Database.Statement<[number, number, number]>;
  readonly #received: Database.Statement<[number, number, number]>;
  readonly #outcome: Database.Statement<[number, Uint8Array]>;
  readonly #insertCommand: Database.Statement<[Uint8Array, number, number, number, Uint8Array]>;
  readonly #insertEvent: Database.Statement<[number, number, number, number, number, Uint8Array, Uint8Array]>;
  readonly #kitchenNumbers = new Map<string, number>();

  constructor(database: Database.Database) {
    this.#onlyKitchen = database.prepare<[]>('SELECT id FROM kitchens ORDER BY number LIMIT 1').pluck();
    this.#insertKitchen = database.prepare('INSERT INTO kitchens (id) VALUES (?)');
    this.#kitchenNumber = database.prepare<[Uint8Array]>('SELECT number FROM kitchens WHERE id = ?').pluck();
    this.#lastLink = database.prepare<[number]>('SELECT sequence, hash FROM events WHERE kitchen = ? ORDER BY sequence DESC LIMIT 1').raw();
    this.#hashAt = database.prepare<[number, number]>('SELECT hash FROM events WHERE kitchen = ? AND sequence = ?').pluck();
    this.#events = database.prepare<[number, number, number]>(`SELECT ${EVENT_COLUMNS} ${EVENTS_AFTER}`).raw();
    this.#links = database.prepare<[number, number, number]>(`SELECT ${EVENT_COLUMNS}, c.received_ms, e.hash ${EVENTS_AFTER}`).raw();
    this.#received = database.prepare<[number, number, number]>(`SELECT c.received_ms ${EVENTS_AFTER}`).pluck();
    this.#outcome = database
      .prepare<[number, Uint8Array]>(
        'SELECT outcome, (SELECT max(sequence) FROM events WHERE command = commands.number) FROM commands WHERE kitchen = ? AND id = ?',
      )
      .raw();
    this.#insertCommand = database.prepare(
      'INSERT INTO commands (id, kitchen, device, received_ms, outcome) VALUES (?, ?, ?, ?, ?) ON CONFLICT (id) DO NOTHING',
    );
    this.#insertEvent = database.prepare(
      'INSERT INTO events (kitchen, sequence, command, ordinal, version, body, hash) VALUES (?, ?, ?, ?, ?, ?, ?)',
    );
  }

  /** The id of the kitchen that was there first, or null. */
  onlyKitchen(): Uint8Array | null {
    const id: unknown = this.#onlyKitchen.get();
    return id === undefined ? null : asBytes(id);
  }

  insertKitchen(id: Uint8Array): void {
    this.#insertKitchen.run(id);
  }

  /** The number of a kitchen. Throws on an unknown one, for only the journal itself gives kitchens their ids. */
  kitchenNumber(kitchenId: string): number {
    const known = this.#kitchenNumbers.get(kitchenId);
    if (known !== undefined) return known;
    const number: unknown = this.#kitchenNumber.get(idToBytes(kitchenId));
    assert(typeof number === 'number', `the journal knows no kitchen ${kitchenId}`);
    this.#kitchenNumbers.set(kitchenId, number);
    return number;
  }

  /** Sequence number and hash of the last event, or null where there is none. */
  lastLink(kitchen: number): { sequence: number; hash: Uint8Array } | null {
    const row: unknown = this.#lastLink.get(kitchen);
    if (row === undefined) return null;
    const [sequence, hash] = asRow(row);
    return { sequence: asNumber(sequence), hash: asBytes(hash) };
  }

  /** The hash of one event, or null where there is none. */
  hashAt(kitchen: number, sequence: number): Uint8Array | null {
    const hash: unknown = this.#hashAt.get(kitchen, sequence);
    return hash === undefined ? null : asBytes(hash);
  }

  eventsAfter(kitchen: number, afterSequence: number, limit: number): EventRow[] {
    return this.#events.all(kitchen, afterSequence, limit).map(eventRow);
  }

  linksAfter(kitchen: number, afterSequence: number, limit: number): LinkRow[] {
    return this.#links.all(kitchen, afterSequence, limit).map((row) => {
      const columns = asRow(row);
      return { ...eventRow(columns), receivedMs: asNumber(columns[7]), hash: asBytes(columns[8]) };
    });
  }

  receivedAfter(kitchen: number, afterSequence: number, limit: number): number[] {
    return this.#received.all(kitchen, afterSequence, limit).map(asNumber);
  }

  /** The packed outcome of a command and the sequence number of its last event, or null where the command is unknown. */
  outcome(kitchen: number, commandId: Uint8Array): { outcome: Uint8Array; lastSequence: number | null } | null {
    const row: unknown = this.#outcome.get(kitchen, commandId);
    if (row === undefined) return null;
    const [outcome, lastSequence] = asRow(row);
    return { outcome: asBytes(outcome), lastSequence: lastSequence === null ? null : asNumber(lastSequence) };
  }

  /** The new command's number, or null where its id is already kept. */
  insertCommand(id: Uint8Array, kitchen: number, device: number, receivedMs: number, outcome: Uint8Array): number | null {
    const { changes, lastInsertRowid } = this.#insertCommand.run(id, kitchen, device, receivedMs, outcome);
    return changes === 0 ? null : Number(lastInsertRowid);
  }

  insertEvent(
    kitchen: number,
    sequence: number,
    command: number,
    ordinal: number,
    version: number,
    body: Uint8Array,
    hash: Uint8Array,
  ): void {
    this.#insertEvent.run(kitchen, sequence, command, ordinal, version, body, hash);
  }
}

function eventRow(row: unknown): EventRow {
  const columns = asRow(row);
  return {
    sequence: asNumber(columns[0]),
    command: asNumber(columns[1]),
    ordinal: asNumber(columns[2]),
    version: asNumber(columns[3]),
    body: fromHex(columns[4]),
    commandId: fromHex(columns[5]).toString('base64url'),
    device: asNumber(columns[6]),
  };
}

function fromHex(column: unknown): Buffer {
  assert(typeof column === 'string', 'a column of bytes as hex');
  return Buffer.from(column, 'hex');
}

function asRow(row: unknown): readonly unknown[] {
  assert(Array.isArray(row), 'a row of columns');
  return row;
}

function asNumber(column: unknown): number {
  assert(typeof column === 'number', 'a column of numbers');
  return column;
}

function asBytes(column: unknown): Uint8Array {
  assert(column instanceof Uint8Array, 'a column of bytes');
  return column;
}
