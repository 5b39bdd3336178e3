import type { FloorEvent, RecordedEvent } from '../../shared/floor/events.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';

/** One command as it goes into the journal: its events and what became of it, refusals too. */
export interface JournalEntry {
  readonly commandId: string;
  readonly deviceId: string;
  /** House time at which the server took it, in whole milliseconds. */
  readonly receivedMs: number;
  readonly events: readonly FloorEvent[];
  readonly outcome: Outcome;
}

/** Where a kitchen's journal ends. */
export interface JournalHead {
  readonly kitchenId: string;
  /** 0 for an empty journal. */
  readonly sequence: number;
  /** Hash of the last event, hex; each event's hash covers the one before. 64 zeros for an empty journal. */
  readonly hash: string;
}

/** Why the journal could not keep a group. Nothing of it was kept. */
export class JournalError extends Error {
  readonly code: 'diskFull' | 'journalFailed' | 'sequenceConflict' | 'commandRepeated';
  constructor(code: JournalError['code'], message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'JournalError';
    this.code = code;
  }
}

/**
 * What happened in a kitchen, in order and for ever. One writer per kitchen appends; what it was told is on disk
 * before anybody hears of it.
 */
export interface Journal {
  /** The only kitchen in the file for now; made with a random id on first use. */
  kitchenId(): Promise<string>;
  head(kitchenId: string): Promise<JournalHead>;
  /**
   * Keeps a group of commands durably, all or nothing, their events numbered on from `expectedSequence`.
   * Rejects with JournalError: `sequenceConflict` where the journal ends elsewhere, `commandRepeated` where one of
   * the command ids is known, `diskFull`, `journalFailed`. At most MAX_GROUP_COMMANDS at once. What a failing disk refused
   * may still turn up after a crash: its command ids are known then, and a repeat gets the outcome that was kept.
   */
  append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead>;
  /**
   * Events with a sequence number above `afterSequence`, oldest first, at most `limit`, as JSON says them: properties that
   * were undefined are missing, -0 is 0. Rejects with JournalError `journalFailed` where one is missing or damaged.
   */
  read(kitchenId: string, afterSequence: number, limit: number): Promise<readonly RecordedEvent[]>;
  /** The outcome kept for a command, or null. */
  outcomeOf(kitchenId: string, commandId: string): Promise<Outcome | null>;
  /** The hash of one event, hex, or null where there is none; a snapshot is believed only if its own agrees. */
  hashAt(kitchenId: string, sequence: number): Promise<string | null>;
  close(): Promise<void>;
}
