import type { MachineClocks } from '../../../server/clock/real-time.ts';
import type { Host } from './host.ts';
import type { VirtualTime } from './virtual-time.ts';

/** As /proc/uptime says it. */
const UPTIME_STEP_MS = 10;
/** It was switched on so long before the simulation began. */
const ON_BEFORE_MS = 86_400_000;

/** The machine that the server runs on: its clocks outlive the server's process. */
export class Machine {
  readonly #time: VirtualTime;
  readonly #onSinceMs: number;
  /** How far the wall clock is from true time. */
  wallErrorMs: number;

  constructor(time: VirtualTime, wallErrorMs: number) {
    this.#time = time;
    this.#onSinceMs = time.nowMs - ON_BEFORE_MS;
    this.wallErrorMs = wallErrorMs;
  }

  /** The clocks as a process on it reads them. */
  clocksOf(host: Host): MachineClocks {
    return {
      wallMs: () => Math.floor(this.#time.nowMs + this.wallErrorMs),
      monotonicMs: () => host.monotonicMs,
      uptimeMs: () => Math.floor((this.#time.nowMs - this.#onSinceMs) / UPTIME_STEP_MS) * UPTIME_STEP_MS,
    };
  }
}
