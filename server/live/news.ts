import type { RecordedEvent } from '../../shared/floor/events.ts';
import { changesScreenDocuments, lacksDocuments, screenDocuments, type ScreenDocuments } from '../../shared/floor/for-screens.ts';
import type { FloorState } from '../../shared/floor/state.ts';

/** News longer than this is a book that was brought in; a snapshot without it is shorter. In characters of JSON. */
const LONGEST_NEWS = 256 * 1024;

/**
 * Watches whether events alone are enough for screens, which hold only the documents that they need: a batch of a formula
 * that no screen has ever had comes with a snapshot instead.
 */
export class News {
  #documents: ScreenDocuments;
  #fromSequence: number;

  /** `recent` are the last events before `state`; who missed some that had to do with documents starts anew. */
  constructor(state: FloorState, recent: readonly RecordedEvent[]) {
    this.#documents = screenDocuments(state);
    this.#fromSequence = recent.findLast(changesScreenDocuments)?.sequence ?? 0;
  }

  /** The events as a message; null where screens need a snapshot. */
  tell(state: FloorState, events: readonly RecordedEvent[]): string | null {
    const isEnough = this.#takeIn(state, events);
    const text = isEnough ? JSON.stringify({ type: 'events', events }) : null;
    if (text !== null && text.length <= LONGEST_NEWS) return text;
    this.#fromSequence = state.sequence;
    return null;
  }

  /** Whether a screen that has everything up to a sequence number can go on by the events since. */
  canGoOnFrom(sequence: number): boolean {
    return sequence >= this.#fromSequence;
  }

  #takeIn(state: FloorState, events: readonly RecordedEvent[]): boolean {
    if (!events.some(changesScreenDocuments)) return true;
    const before = this.#documents;
    this.#documents = screenDocuments(state);
    return !lacksDocuments(before, this.#documents, events);
  }
}
