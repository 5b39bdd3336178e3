import type { DownMessage } from '../../../shared/wire/down.ts';
import type { Violations } from './violation.ts';

/** S9: what one page is told on one line, by sequence numbers. */
export class PageWitness {
  readonly #name: string;
  readonly #violations: Violations;
  #sequence = 0;
  #highest = 0;

  constructor(name: string, violations: Violations) {
    this.#name = name;
    this.#violations = violations;
  }

  /** The page says hello on a new line, with what it holds. */
  greeted(lastSequence: number): void {
    this.#sequence = lastSequence;
  }

  received(text: string): void {
    if (text.startsWith('{"type":"snapshot"')) {
      const sequence = Number(/^\{"type":"snapshot","sequence":(\d+),/.exec(text)?.[1] ?? Number.NaN);
      this.#violations.demand(
        'S9',
        sequence >= this.#highest,
        () => `${this.#name} got a snapshot of ${sequence} after it had ${this.#highest}`,
      );
      this.#holds(sequence);
    } else if (text.startsWith('{"type":"events"')) {
      for (const { sequence } of (JSON.parse(text) as Extract<DownMessage, { type: 'events' }>).events) {
        this.#violations.demand(
          'S9',
          sequence === this.#sequence + 1,
          () => `${this.#name} was told event ${sequence} after event ${this.#sequence}`,
        );
        this.#holds(sequence);
      }
    } else if (text.startsWith('{"type":"live"')) {
      const { sequence } = JSON.parse(text) as Extract<DownMessage, { type: 'live' }>;
      this.#violations.demand(
        'S9',
        sequence === this.#sequence,
        () => `${this.#name} was told that ${sequence} is the end, and had been told up to ${this.#sequence}`,
      );
    }
  }

  /** What the page itself says it holds. */
  shows(sequence: number): void {
    this.#violations.demand(
      'S9',
      sequence === 0 || sequence >= this.#shown,
      () => `${this.#name} went back from ${this.#shown} to ${sequence}`,
    );
    this.#violations.demand('S9', sequence <= this.#highest, () => `${this.#name} holds ${sequence}, and was told up to ${this.#highest}`);
    this.#shown = sequence;
  }
  #shown = 0;

  #holds(sequence: number): void {
    this.#sequence = sequence;
    this.#highest = Math.max(this.#highest, sequence);
  }
}
