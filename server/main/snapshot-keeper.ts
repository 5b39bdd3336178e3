import type { Logger } from 'pino';
import type { Floor } from '../floor/floor.ts';
import type { Journal } from '../journal/journal.ts';
import { writeSnapshot } from '../journal/snapshot-file.ts';

/** A snapshot is written after so many events, and when the server goes down in good order. */
const SNAPSHOT_EVERY_EVENTS = 1_000;

/** Writes snapshots as the floor goes on. They only make starting faster: one that fails is said and left. */
export class SnapshotKeeper {
  readonly #floor: Floor;
  readonly #journal: Journal;
  readonly #path: string;
  readonly #log: Pick<Logger, 'warn'>;
  readonly #stop: () => void;
  #writtenSequence: number;
  #writing: Promise<void> = Promise.resolve();
  #isWriting = false;

  /** `writtenSequence` is up to where the snapshot goes that is there already; 0 where there is none. */
  constructor(floor: Floor, journal: Journal, path: string, writtenSequence: number, log: Pick<Logger, 'warn'>) {
    this.#floor = floor;
    this.#journal = journal;
    this.#path = path;
    this.#log = log;
    this.#writtenSequence = writtenSequence;
    this.#stop = floor.onCommitted(({ state }) => {
      if (!this.#isWriting && state.sequence - this.#writtenSequence >= SNAPSHOT_EVERY_EVENTS) this.#writing = this.#write();
    });
  }

  /** Stops, with a last snapshot where anything has happened since the one before. */
  async finish(): Promise<void> {
    this.#stop();
    await this.#writing;
    if (this.#floor.state.sequence > this.#writtenSequence) await this.#write();
  }

  async #write(): Promise<void> {
    this.#isWriting = true;
    const { state, kitchenId } = this.#floor;
    try {
      const hash = await this.#journal.hashAt(kitchenId, state.sequence);
      if (hash === null) throw new Error(`the journal has no event ${state.sequence}`);
      await writeSnapshot(this.#path, { kitchenId, sequence: state.sequence, hash, state });
      this.#writtenSequence = state.sequence;
    } catch (error) {
      this.#log.warn({ err: error }, 'the snapshot could not be written; the journal has everything');
    } finally {
      this.#isWriting = false;
    }
  }
}
