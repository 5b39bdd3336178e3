/** Timers, passed in so that tests can do without waiting. Real milliseconds. */
export interface Timers {
  set(run: () => void, delayMs: number): { cancel(): void };
}

/** Node's own. */
export const nodeTimers: Timers = {
  set: (run, delayMs) => {
    const timer = setTimeout(run, delayMs);
    return { cancel: () => clearTimeout(timer) };
  },
};

/** Longest sleep of one timer: the machine may sleep, clocks may be set. */
const MAX_SLEEP_MS = 60_000;

/** Wakes up once, at the earliest instant it was last asked for. */
export class AlarmClock {
  readonly #timers: Timers;
  readonly #wake: () => void;
  #pending: { cancel(): void } | null = null;

  constructor(timers: Timers, wake: () => void) {
    this.#timers = timers;
    this.#wake = wake;
  }

  /** Sets it to ring after so many real milliseconds, or (null) not at all. It may ring early; whoever wakes looks again. */
  setMs(delayMs: number | null): void {
    this.#pending?.cancel();
    this.#pending = null;
    if (delayMs === null) return;
    this.#pending = this.#timers.set(
      () => {
        this.#pending = null;
        this.#wake();
      },
      Math.min(Math.max(delayMs, 0), MAX_SLEEP_MS),
    );
  }
}
