import type { RecordedEvent } from '../../../shared/floor/events.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import type { Journal, JournalEntry, JournalHead } from '../../../server/journal/journal.ts';

/** A journal with somebody at its side who sees what it has kept, at the instant it is kept. */
export class WitnessedJournal implements Journal {
  readonly #journal: Journal;
  readonly #kept: (group: readonly JournalEntry[]) => void;

  constructor(journal: Journal, kept: (group: readonly JournalEntry[]) => void) {
    this.#journal = journal;
    this.#kept = kept;
  }

  kitchenId(): Promise<string> {
    return this.#journal.kitchenId();
  }

  head(kitchenId: string): Promise<JournalHead> {
    return this.#journal.head(kitchenId);
  }

  async append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    const head = await this.#journal.append(kitchenId, expectedSequence, group);
    this.#kept(group);
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
}
