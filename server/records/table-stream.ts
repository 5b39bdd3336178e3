import { Readable } from 'node:stream';

/** Bytes that are asked for ahead of whoever takes them: two chunks, so that one is written while the other is sent. */
const AHEAD_BYTES = 512 * 1024;

export interface TableStreamEars {
  /** One more chunk is wanted. */
  more(): void;
  /** It is over, taken to its end or not. */
  over(isTakenWhole: boolean): void;
}

/** A table on its way out: takes chunks as they are poured and asks for one more whenever somebody has taken one. */
export class TableStream extends Readable {
  readonly #ears: TableStreamEars;
  #isWhole = false;

  constructor(ears: TableStreamEars) {
    super({ highWaterMark: AHEAD_BYTES });
    this.#ears = ears;
    // It may break off before anybody takes it; whoever does take it is told all the same.
    this.on('error', () => {});
  }

  /** Takes a chunk that was asked for. */
  arrived(bytes: Uint8Array, isLast: boolean): void {
    this.#isWhole = isLast;
    if (bytes.length > 0) this.push(bytes);
    if (isLast) this.push(null);
    // Nothing in it, and still not the last: the stream asks only after something was pushed.
    else if (bytes.length === 0) this.#ears.more();
  }

  override _read(): void {
    if (!this.#isWhole) this.#ears.more();
  }

  override _destroy(error: Error | null, callback: (error?: Error | null) => void): void {
    this.#ears.over(this.#isWhole);
    callback(error);
  }
}
