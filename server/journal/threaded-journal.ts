import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { unreachable } from '../../shared/result.ts';
import type { FromJournalThread } from './journal-messages.ts';
import { JournalError, type Journal, type JournalEntry, type JournalHead } from './journal.ts';
import type { JournalPort, StartJournalThread } from './start-journal-thread.ts';

/** A group of more values than this is long: it takes longer to write down than the loop should wait. A tap has some dozens. */
export const LONG_GROUP_VALUES = 600;

interface Pending {
  readonly resolve: (head: JournalHead) => void;
  readonly reject: (error: Error) => void;
}

/**
 * A journal on disk whose long groups (a day's plan, a book that is brought in) are written down and hashed by a thread of
 * its own, with its own connection to the file, so that nobody else has to wait for that. What is short is appended here: the
 * way to a thread and back would take a tap longer. One append is through before the next begins.
 */
export class ThreadedJournal implements Journal {
  readonly #journal: Journal;
  readonly #path: string;
  readonly #start: StartJournalThread;
  readonly #longValues: number;
  readonly #pending = new Map<number, Pending>();
  #port: JournalPort | null = null;
  #last: Promise<unknown> = Promise.resolve();
  #nextCallId = 1;
  #isClosed = false;

  /** `journal` is open on the file at `path`; the thread is started with the first long group. */
  constructor(journal: Journal, path: string, start: StartJournalThread, longValues: number = LONG_GROUP_VALUES) {
    this.#journal = journal;
    this.#path = path;
    this.#start = start;
    this.#longValues = longValues;
  }

  kitchenId(): Promise<string> {
    return this.#journal.kitchenId();
  }

  head(kitchenId: string): Promise<JournalHead> {
    return this.#journal.head(kitchenId);
  }

  append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    const isLong = valuesLeft(group, this.#longValues) < 0;
    // Once it is closed, the journal itself says so.
    const appended = this.#last.then(() =>
      (isLong && !this.#isClosed ? this.#appendThere : this.#appendHere)(kitchenId, expectedSequence, group),
    );
    // Whether the one before was kept is for who gave it.
    this.#last = appended.catch(() => {});
    return appended;
  }

  read(kitchenId: string, afterSequence: number, limit: number): Promise<readonly RecordedEvent[]> {
    return this.#journal.read(kitchenId, afterSequence, limit);
  }

  outcomeOf(kitchenId: string, commandId: string): Promise<Outcome | null> {
    return this.#journal.outcomeOf(kitchenId, commandId);
  }

  hashAt(kitchenId: string, sequence: number): Promise<string | null> {
    return this.#journal.hashAt(kitchenId, sequence);
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    const port = this.#port;
    this.#port = null;
    // The thread first: whoever closes the file last folds its log in.
    await port?.stop();
    await this.#journal.close();
  }

  readonly #appendHere: Journal['append'] = (...group) => this.#journal.append(...group);

  readonly #appendThere: Journal['append'] = (kitchenId, expectedSequence, group) => {
    const port = (this.#port ??= this.#start(this.#path, {
      hear: (message) => this.#hear(message),
      died: (error) => this.#died(error),
    }));
    const callId = this.#nextCallId;
    this.#nextCallId += 1;
    return new Promise((resolve, reject) => {
      this.#pending.set(callId, { resolve, reject });
      port.say({ type: 'append', callId, kitchenId, expectedSequence, group });
    });
  };

  #hear(message: FromJournalThread): void {
    const pending = this.#pending.get(message.callId);
    if (pending === undefined) return;
    this.#pending.delete(message.callId);
    switch (message.type) {
      case 'kept':
        return pending.resolve(message.head);
      case 'refused':
        return pending.reject(new JournalError(message.code, message.message));
      case 'broken':
        return pending.reject(Object.assign(new Error(message.message), { stack: message.stack }));
      default:
        return unreachable(message);
    }
  }

  /** Whether it kept what it was told nobody knows: as after a crash, only a new start finds out. */
  #died(error: Error): void {
    this.#port = null;
    const pending = [...this.#pending.values()];
    this.#pending.clear();
    for (const { reject } of pending) reject(error);
  }
}

/** How many of so many values a value leaves, with all that is in it; below nothing as soon as it has more. */
function valuesLeft(value: unknown, most: number): number {
  let left = most - 1;
  if (typeof value !== 'object' || value === null) return left;
  for (const part of Object.values(value)) {
    if (left < 0) return left;
    left = valuesLeft(part, left);
  }
  return left;
}
