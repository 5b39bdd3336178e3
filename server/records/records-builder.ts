import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { STATE_VERSION } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import type { JournalHead } from '../journal/journal.ts';
import { openDatabase } from '../journal/open-database.ts';
import { OpenError } from '../journal/open-error.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import { RecordStatements } from './record-statements.ts';
import { EMPTY_FOLD, RecordsFold, type FoldCheckpoint } from './records-fold.ts';
import { RECORDS_DATABASE, RECORDS_FILE } from './records-schema.ts';

/** Events of one transaction, where somebody may ask something meanwhile. */
const PAGE_EVENTS = 4_000;
/** The same where nobody does: what changes often is written once. */
export const LONG_PAGE_EVENTS = 20_000;
/** So many events after the last one the fold itself is kept, to go on from; rows are kept with every page. */
const CHECKPOINT_EVENTS = 20_000;

/** How far the records are, and how far they have to go. */
export interface BuildProgress {
  readonly sequence: number;
  readonly of: number;
}

/** Follows a journal, which a server may be writing, and keeps the rows that are made of it. One process, one builder for each data folder. */
export class RecordsBuilder {
  readonly #journal: SqliteJournal;
  readonly #kitchenId: string;
  readonly #database: Database.Database;
  readonly #rows: RecordStatements;
  readonly #fold: RecordsFold;
  #checkpointSequence: number;
  /** A page was not kept: the fold is ahead of its rows. */
  #isBroken = false;

  private constructor(journal: SqliteJournal, kitchenId: string, database: Database.Database, checkpoint: FoldCheckpoint) {
    this.#journal = journal;
    this.#kitchenId = kitchenId;
    this.#database = database;
    this.#rows = new RecordStatements(database);
    this.#fold = new RecordsFold(this.#rows, checkpoint);
    this.#checkpointSequence = checkpoint.state.sequence;
    // Rows may be ahead of the fold that goes on from here; what is taken in again must find what it found the first time.
    this.#rows.takeOutAfter(this.#checkpointSequence);
  }

  /**
   * Opens the records of a data folder, or begins them; null while its journal holds nothing yet. Records of another version or kitchen,
   * ahead of their journal or not of it, damaged or not ours are thrown away: there is nothing in them that the journal does not say.
   */
  static async open(dataFolder: string): Promise<RecordsBuilder | null> {
    const journal = new SqliteJournal(join(dataFolder, JOURNAL_FILE), { readOnly: true });
    try {
      const kitchenId = await journal.knownKitchenId();
      if (kitchenId === null) {
        await journal.close();
        return null;
      }
      const path = join(dataFolder, RECORDS_FILE);
      const database = openedOrAnew(path);
      const checkpoint = await checkpointOf(database, journal, kitchenId);
      if (checkpoint !== null) return new RecordsBuilder(journal, kitchenId, database, checkpoint);
      database.close();
      throwAway(path);
      return new RecordsBuilder(journal, kitchenId, openedOrAnew(path), EMPTY_FOLD);
    } catch (error) {
      await journal.close();
      throw error;
    }
  }

  /** Takes in one page of what is new. Answers how far it is: at its end there is nothing new. */
  async page(limit = PAGE_EVENTS): Promise<BuildProgress> {
    assert(!this.#isBroken, 'a builder whose page failed is closed, and another goes on from the checkpoint');
    const head = await this.#journal.head(this.#kitchenId);
    const events = await this.#journal.read(this.#kitchenId, this.#fold.sequence, limit);
    const last = events.at(-1);
    if (last === undefined) return { sequence: this.#fold.sequence, of: head.sequence };
    const hash = await this.#journal.hashAt(this.#kitchenId, last.sequence);
    this.#isBroken = true;
    this.#takeIn(events, { kitchenId: this.#kitchenId, sequence: last.sequence, hash: hash ?? '' });
    this.#isBroken = false;
    return { sequence: last.sequence, of: Math.max(head.sequence, last.sequence) };
  }

  /** Takes in all that is new, so many events at once. */
  async catchUp(progress: (progress: BuildProgress) => void = () => {}, limit = PAGE_EVENTS): Promise<BuildProgress> {
    for (;;) {
      const at = await this.page(limit);
      progress(at);
      if (at.sequence >= at.of) return at;
    }
  }

  async close(): Promise<void> {
    if (!this.#isBroken) await this.#leaveCheckpoint();
    this.#database.close();
    await this.#journal.close();
  }

  async #leaveCheckpoint(): Promise<void> {
    // What was taken in since the last checkpoint need not be taken in again.
    const hash = await this.#journal.hashAt(this.#kitchenId, this.#fold.sequence);
    if (hash !== null && this.#checkpointSequence < this.#fold.sequence)
      this.#keepCheckpoint({ kitchenId: this.#kitchenId, sequence: this.#fold.sequence, hash });
  }

  #takeIn(events: readonly RecordedEvent[], head: JournalHead): void {
    this.#database.transaction(() => {
      let isJumped = false;
      for (const event of events) {
        this.#fold.take(event);
        isJumped ||= event.event.type === 'clockJumped';
      }
      this.#fold.finish();
      // Rows that were moved by a jump must not be moved again.
      if (isJumped || head.sequence - this.#checkpointSequence >= CHECKPOINT_EVENTS || this.#checkpointSequence === 0)
        this.#keepCheckpoint(head);
      else this.#rows.run('UPDATE checkpoint SET written = ?', head.sequence);
    })();
  }

  #keepCheckpoint({ kitchenId, sequence, hash }: JournalHead): void {
    this.#rows.run(
      'INSERT OR REPLACE INTO checkpoint (only_row, kitchen, version, sequence, hash, written, fold) VALUES (1, ?, ?, ?, ?, ?, ?)',
      kitchenId,
      STATE_VERSION,
      sequence,
      hash,
      sequence,
      JSON.stringify(this.#fold.checkpoint),
    );
    this.#checkpointSequence = sequence;
  }
}

/** Throws the records of a data folder away. Nothing is lost: they are made again of the journal. */
export function throwAwayRecords(dataFolder: string): void {
  throwAway(join(dataFolder, RECORDS_FILE));
}

function openedOrAnew(path: string): Database.Database {
  try {
    return forRecords(openDatabase(path, RECORDS_DATABASE));
  } catch (error) {
    // A full disk or a folder that takes nothing is no fault of the file.
    if (!(error instanceof OpenError) || error.code === 'diskFull' || error.code === 'folderNotWritable') throw error;
    throwAway(path);
    return forRecords(openDatabase(path, RECORDS_DATABASE));
  }
}

/** What is lost of records when the power goes is made again: not every page need be on disk before the next. */
function forRecords(database: Database.Database): Database.Database {
  database.pragma('synchronous = NORMAL');
  database.pragma('cache_size = -64000');
  database.pragma('wal_autocheckpoint = 8000');
  return database;
}

function throwAway(path: string): void {
  for (const file of [path, `${path}-wal`, `${path}-shm`]) rmSync(file, { force: true });
}

/** What to go on from; null where the records have to be made anew. */
async function checkpointOf(database: Database.Database, journal: SqliteJournal, kitchenId: string): Promise<FoldCheckpoint | null> {
  const row: unknown = database.prepare('SELECT kitchen, version, sequence, hash, fold FROM checkpoint').raw().get();
  if (row === undefined) {
    const isEmpty = database.prepare('SELECT count(*) FROM workpiece_events').pluck().get() === 0;
    return isEmpty ? EMPTY_FOLD : null;
  }
  const [kitchen, version, sequence, hash, fold] = row as [string, number, number, string, string];
  if (kitchen !== kitchenId || version !== STATE_VERSION) return null;
  if ((await journal.hashAt(kitchenId, sequence)) !== hash) return null;
  return JSON.parse(fold) as FoldCheckpoint;
}
