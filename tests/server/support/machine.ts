import type { MachineClocks } from '../../../server/clock/real-time.ts';
import type { Timers } from '../../../server/floor/alarm-clock.ts';

/** When the machine of the tests was switched on: a market Saturday, 03:00 UTC. */
export const MORNING_MS = Date.UTC(2026, 2, 7, 3, 0, 0);

/** A machine whose clocks move only when a test says so, and call what has come due. */
export class Machine implements MachineClocks, Timers {
  #wallMs: number;
  #monotonicMs = 1_000;
  #uptimeMs = 50_000;
  #timers: { readonly dueMs: number; readonly run: () => void }[] = [];

  /** `wallMs` is what its wall clock shows, in milliseconds since 1970. */
  constructor(wallMs = MORNING_MS) {
    this.#wallMs = wallMs;
  }

  wallMs(): number {
    return this.#wallMs;
  }

  monotonicMs(): number {
    return this.#monotonicMs;
  }

  uptimeMs(): number {
    return this.#uptimeMs;
  }

  /** How many timers are set. */
  get timerCount(): number {
    return this.#timers.length;
  }

  set(run: () => void, delayMs: number): { cancel(): void } {
    const timer = { dueMs: this.#monotonicMs + delayMs, run };
    this.#timers.push(timer);
    return {
      cancel: () => {
        this.#timers = this.#timers.filter((other) => other !== timer);
      },
    };
  }

  /** Lets real time pass, timer by timer; whoever waits for what a timer started gets the chance in between. */
  async pass(ms: number): Promise<void> {
    const untilMs = this.#monotonicMs + ms;
    for (;;) {
      const next = this.#timers.filter((timer) => timer.dueMs <= untilMs).sort((a, b) => a.dueMs - b.dueMs)[0];
      if (next === undefined) break;
      this.#timers = this.#timers.filter((timer) => timer !== next);
      this.#move(Math.max(0, next.dueMs - this.#monotonicMs));
      next.run();
      await eventLoopTurns();
    }
    this.#move(untilMs - this.#monotonicMs);
    await eventLoopTurns();
  }

  /** The clock goes on and no timer is called, as in a process that is busy or away. */
  passUnnoticed(ms: number): void {
    this.#move(ms);
  }

  /** Somebody sets the wall clock. */
  setWallClock(byMs: number): void {
    this.#wallMs += byMs;
  }

  /** The machine sleeps: its monotonic clock stands still, and so do its timers. */
  sleep(ms: number): void {
    this.#wallMs += ms;
    this.#uptimeMs += ms;
  }

  #move(ms: number): void {
    this.#wallMs += ms;
    this.#monotonicMs += ms;
    this.#uptimeMs += ms;
  }
}

/** Enough turns of the event loop for a command to be written, answered, published, and read at the other end of a stream. */
export async function eventLoopTurns(turns = 12): Promise<void> {
  for (let turn = 0; turn < turns; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}
