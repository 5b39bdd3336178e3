import { EVENT_VERSION, type RecordedEvent } from '../../shared/floor/events.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { assert } from '../../shared/result.ts';
import { canonicalJson } from './canonical-json.ts';
import { chainHash, hashText, ZERO_HASH } from './chain-hash.ts';
import { checkGroup } from './group-check.ts';
import { JournalError, type Journal, type JournalEntry, type JournalHead } from './journal.ts';

/** What stands for the disk: a journal in memory can be closed and opened again on the same one. */
export interface MemoryDisk {
  readonly kitchenId: string;
  events: readonly { readonly recorded: RecordedEvent; readonly hash: Uint8Array }[];
  outcomes: ReadonlyMap<string, Outcome>;
}

/** A disk on which nothing is kept yet. */
export function emptyMemoryDisk(kitchenId: string): MemoryDisk {
  return { kitchenId, events: [], outcomes: new Map() };
}

/** A journal in memory, for tests and simulation. It keeps the same promises as the one on disk, but for outliving the process. */
export class MemoryJournal implements Journal {
  readonly #disk: MemoryDisk;
  #isOpen = true;

  constructor(disk: MemoryDisk) {
    this.#disk = disk;
  }

  async kitchenId(): Promise<string> {
    return this.#opened().kitchenId;
  }

  async head(kitchenId: string): Promise<JournalHead> {
    const { events } = this.#kitchen(kitchenId);
    return { kitchenId, sequence: events.length, hash: hashText(events.at(-1)?.hash ?? ZERO_HASH) };
  }

  async append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    const disk = this.#kitchen(kitchenId);
    checkGroup(expectedSequence, group);
    if (disk.events.length !== expectedSequence) {
      throw new JournalError('sequenceConflict', `The journal ends at ${disk.events.length}, not at ${expectedSequence}.`);
    }
    // Copies take the place of the old ones only at the end: whatever throws before then has changed nothing.
    const events = [...disk.events];
    const outcomes = new Map(disk.outcomes);
    for (const { commandId, deviceId, receivedMs, events: added, outcome } of group) {
      if (outcomes.has(commandId)) throw new JournalError('commandRepeated', `Command ${commandId} is already kept.`);
      outcomes.set(commandId, frozenCopy(outcome));
      added.forEach((event, ordinal) => {
        const recorded = frozenCopy({ sequence: events.length + 1, commandId, ordinal, deviceId, event });
        const previous = events.at(-1)?.hash ?? ZERO_HASH;
        events.push({ recorded, hash: chainHash(previous, { ...recorded, kitchenId, receivedMs, version: EVENT_VERSION }) });
      });
    }
    disk.events = events;
    disk.outcomes = outcomes;
    return this.head(kitchenId);
  }

  async read(kitchenId: string, afterSequence: number, limit: number): Promise<readonly RecordedEvent[]> {
    const { events } = this.#kitchen(kitchenId);
    return events.slice(afterSequence, afterSequence + limit).map(({ recorded }) => recorded);
  }

  async outcomeOf(kitchenId: string, commandId: string): Promise<Outcome | null> {
    return this.#kitchen(kitchenId).outcomes.get(commandId) ?? null;
  }

  async hashAt(kitchenId: string, sequence: number): Promise<string | null> {
    const hash = this.#kitchen(kitchenId).events[sequence - 1]?.hash;
    return hash === undefined ? null : hashText(hash);
  }

  async close(): Promise<void> {
    this.#isOpen = false;
  }

  #opened(): MemoryDisk {
    assert(this.#isOpen, 'the journal is closed');
    return this.#disk;
  }

  #kitchen(kitchenId: string): MemoryDisk {
    const disk = this.#opened();
    assert(kitchenId === disk.kitchenId, `the journal knows no kitchen ${kitchenId}`);
    return disk;
  }
}

/** A copy as JSON would give it back (throws on what JSON cannot say), which nobody can change: readers share it. */
function frozenCopy<Value>(value: Value): Value {
  return JSON.parse(canonicalJson(value), (_key, part: unknown) => Object.freeze(part)) as Value;
}
