import { idleS } from './idle.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

interface Stay {
  readonly fromS: number;
  readonly toS: number;
  readonly state: number;
}

/** The states in which a resource stands while it is held, in order of time, and what lies between them for set-up. */
export class StateLine {
  readonly #setupS: readonly (readonly number[])[] | null;
  readonly #longestSetupS: number;
  readonly #stateAtFirst: number | null;
  readonly #sharesOneState: boolean;
  readonly #stays: Stay[] = [];
  /** The longest that was ever put down: what began earlier than that before an instant is over. */
  #longestS = 0;

  constructor(setupS: readonly (readonly number[])[] | null, stateAtFirst: number | null, sharesOneState: boolean) {
    this.#setupS = setupS;
    this.#longestSetupS = setupS === null ? 0 : Math.max(0, ...setupS.flat());
    this.#stateAtFirst = stateAtFirst;
    this.#sharesOneState = sharesOneState;
  }

  /** Puts a stay down. */
  add(fromS: number, toS: number, state: number): void {
    this.#longestS = Math.max(this.#longestS, toS - fromS);
    this.#stays.splice(this.#firstFrom(fromS), 0, { fromS, toS, state });
  }

  /** Takes a stay away that was put down just so. */
  remove(fromS: number, toS: number, state: number): void {
    let index = this.#firstFrom(fromS);
    for (;;) {
      const stay = this.#stays[index];
      if (stay === undefined) throw new Error('a stay is taken away that was never put down');
      if (stay.fromS === fromS && stay.toS === toS && stay.state === state) break;
      index += 1;
    }
    this.#stays.splice(index, 1);
  }

  /** As for Timeline: `fromS` where the state fits here with its set-up on both sides; else the instant before which it cannot begin. */
  blockedUntil(fromS: number, toS: number, state: number): number {
    let untilS = Math.max(fromS, this.#readyAtFirstS(state));
    for (let index = this.#firstFrom(toS + this.#longestSetupS) - 1; index >= 0; index -= 1) {
      const stay = this.#stays[index] as Stay;
      if (stay.fromS + this.#longestS + this.#longestSetupS <= fromS) break;
      if (this.#isInTheWay(stay, fromS, toS, state)) untilS = Math.max(untilS, stay.toS + this.between(stay.state, state));
    }
    return untilS;
  }

  /** The mirror of blockedUntil: `toS`, or the instant after which it cannot end. */
  blockedFrom(fromS: number, toS: number, state: number): number {
    if (fromS < this.#readyAtFirstS(state)) return -Infinity;
    let beforeS = toS;
    for (let index = this.#firstFrom(toS + this.#longestSetupS) - 1; index >= 0; index -= 1) {
      const stay = this.#stays[index] as Stay;
      if (stay.fromS + this.#longestS + this.#longestSetupS <= fromS) break;
      if (this.#isInTheWay(stay, fromS, toS, state)) beforeS = Math.min(beforeS, stay.fromS - this.between(state, stay.state));
    }
    return beforeS;
  }

  /** Seconds in which it stands in a state between two stays that want it. */
  idleS(): number {
    return idleS(this.#stays);
  }

  #isInTheWay(stay: Stay, fromS: number, toS: number, state: number): boolean {
    if (stay.toS <= fromS) return fromS < stay.toS + this.between(stay.state, state);
    if (stay.fromS >= toS) return stay.fromS < toS + this.between(state, stay.state);
    return this.#sharesOneState && stay.state !== state;
  }

  /** Seconds of set-up from a state to the next. */
  between(state: number, next: number): number {
    return this.#setupS === null ? 0 : (this.#setupS[state]?.[next] ?? 0);
  }

  #readyAtFirstS(state: number): number {
    return this.#stateAtFirst === null ? -Infinity : this.#setupFromFirst(this.#stateAtFirst, state);
  }

  /** A state that needs no set-up fits before the origin, too. */
  #setupFromFirst(first: number, state: number): number {
    const setupS = this.between(first, state);
    return setupS > 0 ? setupS : -Infinity;
  }

  /** The first stay that begins at an instant or after. */
  #firstFrom(atS: number): number {
    let low = 0;
    let high = this.#stays.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#stays[middle] as Stay).fromS < atS) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
