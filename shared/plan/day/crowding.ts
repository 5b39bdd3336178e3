import { LEVEL_STRETCH_S, PRICES } from './problem.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Whose work is to be level. */
export const LEVELLED_KIND = 'station';

/** Stretches at first before the origin, and after it. */
const BEFORE = 96;
const AFTER = 192;

/** How crowded the work of one station is, kept while work is put there and taken away. */
export class Crowding {
  readonly #hands: number;
  #busyS: Float64Array = new Float64Array(BEFORE + AFTER);
  #before = BEFORE;
  #squares = 0;

  /** @param hands how many work there, 1 at least. */
  constructor(hands: number) {
    this.#hands = Math.max(1, hands);
  }

  /** Work of so many hands from an instant to another, in seconds after the origin; less than none takes it away again. */
  add(fromS: number, toS: number, hands: number): void {
    let atS = fromS;
    while (atS < toS) {
      const stretch = Math.floor(atS / LEVEL_STRETCH_S);
      const endS = Math.min(toS, (stretch + 1) * LEVEL_STRETCH_S);
      this.#addTo(stretch, (endS - atS) * hands);
      atS = endS;
    }
  }

  /** What it costs. */
  price(): number {
    return (this.#squares / (LEVEL_STRETCH_S * this.#hands) ** 2) * PRICES.crowdedStretch;
  }

  #addTo(stretch: number, busyS: number): void {
    while (stretch + this.#before < 0 || stretch + this.#before >= this.#busyS.length) this.#grow();
    const was = this.#busyS[stretch + this.#before] as number;
    this.#busyS[stretch + this.#before] = was + busyS;
    // Whole seconds: sums and squares are exact, and what is taken away leaves nothing behind.
    this.#squares += (was + busyS) ** 2 - was ** 2;
  }

  #grow(): void {
    const more = this.#busyS.length;
    const grown = new Float64Array(this.#busyS.length + 2 * more);
    grown.set(this.#busyS, more);
    this.#busyS = grown;
    this.#before += more;
  }
}
