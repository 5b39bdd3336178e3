import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import type { Journal, JournalEntry, JournalHead } from './journal.ts';

/** Where an append can be held up or fail. */
export type AppendMoment = 'beforeAppend' | 'afterAppend';

/**
 * What goes wrong at a moment: nothing (null), an error that the caller gets, or `noAnswer`: the promise never settles, as if
 * the process had died there. After the append, the group is kept all the same.
 */
export type AppendFault = Error | 'noAnswer' | null;

export interface SlowJournalOptions {
  readonly delay: (moment: AppendMoment) => Promise<void>;
  /** Asked once at each moment, after its delay. Without it nothing fails. */
  readonly fault?: (moment: AppendMoment) => AppendFault;
}

/** Wraps a journal so that its appends are as slow as one likes and fail where one likes, for tests and simulation. */
export class SlowJournal implements Journal {
  readonly #journal: Journal;
  readonly #options: SlowJournalOptions;

  constructor(journal: Journal, options: SlowJournalOptions) {
    this.#journal = journal;
    this.#options = options;
  }

  kitchenId(): Promise<string> {
    return this.#journal.kitchenId();
  }

  head(kitchenId: string): Promise<JournalHead> {
    return this.#journal.head(kitchenId);
  }

  async append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    await this.#pass('beforeAppend');
    const head = await this.#journal.append(kitchenId, expectedSequence, group);
    await this.#pass('afterAppend');
    return head;
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

  close(): Promise<void> {
    return this.#journal.close();
  }

  async #pass(moment: AppendMoment): Promise<void> {
    await this.#options.delay(moment);
    const fault = this.#options.fault?.(moment) ?? null;
    if (fault === 'noAnswer') await new Promise<never>(() => {});
    else if (fault !== null) throw fault;
  }
}
