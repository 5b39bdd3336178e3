import { uptime } from 'node:os';
import { performance } from 'node:perf_hooks';

/** The machine's clocks, in milliseconds. */
export interface MachineClocks {
  /** The wall clock, which anybody may set. */
  wallMs(): number;
  /** Runs forward only, and stands still while the machine sleeps. */
  monotonicMs(): number;
  /** Since the machine was switched on, sleep included. */
  uptimeMs(): number;
}

/** This machine's. */
export const machineClocks: MachineClocks = {
  wallMs: () => Date.now(),
  monotonicMs: () => performance.now(),
  uptimeMs: () => uptime() * 1000,
};

/** The wall clock may stray by so much from the monotonic one before it counts as set. */
export const JUMP_MS = 2000;

/** What the clocks did since the last look. */
export type ClockChange =
  | { readonly kind: 'none' }
  | { readonly kind: 'slept'; readonly byMs: number }
  | { readonly kind: 'jumped'; readonly byMs: number };

/**
 * Real time that no one can set: a monotonic clock anchored once to the wall clock. Sleep of the machine is time that
 * went by and is caught up; a wall clock that was set is not, until the floor has taken note of it.
 */
export class RealTime {
  readonly #clocks: MachineClocks;
  #wallAnchorMs: number;
  #monotonicAnchorMs: number;
  #uptimeAnchorMs: number;

  constructor(clocks: MachineClocks) {
    this.#clocks = clocks;
    this.#wallAnchorMs = clocks.wallMs();
    this.#monotonicAnchorMs = clocks.monotonicMs();
    this.#uptimeAnchorMs = clocks.uptimeMs();
  }

  /** Real time now, in milliseconds since 1970. */
  nowMs(): number {
    return this.#wallAnchorMs + (this.#clocks.monotonicMs() - this.#monotonicAnchorMs);
  }

  /**
   * The machine's clock that only runs forward, in milliseconds: for how long ago something was. Nobody can set it, and it stands
   * still while the machine sleeps.
   */
  monotonicMs(): number {
    return this.#clocks.monotonicMs();
  }

  /** Looks whether the machine slept (already caught up when this returns) or its clock was set (`follow` takes that in). */
  look(): ClockChange {
    const ranMs = this.#clocks.monotonicMs() - this.#monotonicAnchorMs;
    const sleptMs = this.#clocks.uptimeMs() - this.#uptimeAnchorMs - ranMs;
    if (sleptMs > JUMP_MS) {
      this.#uptimeAnchorMs += sleptMs;
      this.#wallAnchorMs += sleptMs;
      return { kind: 'slept', byMs: Math.round(sleptMs) };
    }
    const byMs = Math.round(this.#clocks.wallMs() - this.nowMs());
    return Math.abs(byMs) > JUMP_MS ? { kind: 'jumped', byMs } : { kind: 'none' };
  }

  /** Goes along with a clock that was set by so much. */
  follow(byMs: number): void {
    this.#wallAnchorMs += byMs;
  }
}
