import { callsToRaise, nextRoleChangeMs } from '../../shared/floor/calls.ts';
import type { HouseClock } from '../clock/house-clock.ts';
import { AlarmClock, type Timers } from './alarm-clock.ts';
import type { Floor } from './floor.ts';
import { HOUSE_DEVICE_ID } from './house-device.ts';

/** How soon calls are raised again that the journal could not keep. Real time. */
const RETRY_MS = 2_000;

/**
 * Raises calls when their time has come. What is due follows from state and time alone, so a restart or a missed timer
 * only means that it looks later.
 */
export class Caller {
  readonly #floor: Floor;
  readonly #clock: Pick<HouseClock, 'nowMs' | 'realUntilMs'>;
  readonly #newId: () => string;
  readonly #alarm: AlarmClock;
  readonly #stop: () => void;
  #isRaising = false;
  #isLookWanted = false;
  #isStopped = false;

  constructor(floor: Floor, clock: Pick<HouseClock, 'nowMs' | 'realUntilMs'>, timers: Timers, newId: () => string) {
    this.#floor = floor;
    this.#clock = clock;
    this.#newId = newId;
    this.#alarm = new AlarmClock(timers, () => void this.look());
    this.#stop = floor.onCommitted(() => void this.look());
  }

  /** Raises what is due now and sets the alarm for what comes next. */
  async look(): Promise<void> {
    this.#isLookWanted = true;
    if (this.#isRaising) return;
    this.#isRaising = true;
    let failed = false;
    while (this.#isLookWanted && !this.#isStopped) {
      this.#isLookWanted = false;
      failed = await this.#raise();
      // Asking a full disk at once again would be asking for ever.
      if (failed) break;
    }
    this.#isRaising = false;
    if (this.#isStopped) return;
    const nextMs = nextRoleChangeMs(this.#floor.state, this.#clock.nowMs());
    const waitMs = nextMs === null ? Infinity : this.#clock.realUntilMs(nextMs);
    // A disk that was full may have room again: the call is still true and still wanted.
    const nextLookMs = failed ? Math.min(waitMs, RETRY_MS) : waitMs;
    this.#alarm.setMs(nextLookMs === Infinity ? null : nextLookMs);
  }

  /** Raises each call that is true and not raised; true where the journal could not keep one. */
  async #raise(): Promise<boolean> {
    const commands = callsToRaise(this.#floor.state, this.#clock.nowMs());
    const outcomes = await Promise.all(
      commands.map((command) =>
        this.#floor.submit({ commandId: this.#newId(), deviceId: HOUSE_DEVICE_ID, stationId: null, tap: null, command }),
      ),
    );
    return outcomes.some((outcome) => !outcome.ok && outcome.refusal.code === 'notKept');
  }

  stop(): void {
    this.#isStopped = true;
    this.#stop();
    this.#alarm.setMs(null);
  }
}
