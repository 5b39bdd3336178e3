import type { RecordedEvent } from '../../shared/floor/events.ts';

/** The last events, for clients that were away for a moment. */
export class RecentEvents {
  readonly #limit: number;
  #events: RecordedEvent[] = [];

  constructor(limit: number) {
    this.#limit = limit;
  }

  add(events: readonly RecordedEvent[]): void {
    this.#events.push(...events);
    // Dropped in halves, so that it costs nothing noticeable per event.
    if (this.#events.length > 2 * this.#limit) this.#events = this.#events.slice(-this.#limit);
  }

  /** What came after a sequence number, or null where that reaches back further than is kept. */
  after(sequence: number, currentSequence: number): readonly RecordedEvent[] | null {
    if (sequence > currentSequence) return null;
    const missing = currentSequence - sequence;
    // What was recorded before anybody listened is not here.
    if (missing > 0 && this.#events.at(-1)?.sequence !== currentSequence) return null;
    if (missing > this.#limit || missing > this.#events.length) return null;
    return missing === 0 ? [] : this.#events.slice(-missing);
  }
}
