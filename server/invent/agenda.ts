/** What somebody has in mind to do at an instant. */
interface Deed {
  readonly atMs: number;
  readonly run: () => void;
}

/** Small deeds in the order of their instants: a line on the scale, a call that is heard, a reading on the way past. */
export class Agenda {
  readonly #deeds: Deed[] = [];

  get nextMs(): number {
    return this.#deeds[0]?.atMs ?? Number.POSITIVE_INFINITY;
  }

  /** Those of one instant are done as they were noted. */
  note(atMs: number, run: () => void): void {
    const index = this.#deeds.findLastIndex((deed) => deed.atMs <= atMs);
    this.#deeds.splice(index + 1, 0, { atMs: Math.round(atMs), run });
  }

  doNext(): void {
    this.#deeds.shift()?.run();
  }
}
