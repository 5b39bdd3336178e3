import type { Logger } from 'pino';
import type { HouseClock } from '../clock/house-clock.ts';
import type { RealTime } from '../clock/real-time.ts';
import type { Floor } from '../floor/floor.ts';
import { HOUSE_DEVICE_ID } from '../floor/house-device.ts';

/**
 * Looks whether the machine's clock was set. A jump becomes an event that moves all open instants along with it, and only
 * then the house's clock follows, so that nothing fires and nothing is swallowed.
 */
export class ClockWatch {
  readonly #real: RealTime;
  readonly #clock: HouseClock;
  readonly #floor: Floor;
  readonly #newId: () => string;
  readonly #log: Pick<Logger, 'warn'>;
  readonly #onChanged: () => void;
  #isNoting = false;

  constructor(real: RealTime, clock: HouseClock, floor: Floor, newId: () => string, log: Pick<Logger, 'warn'>, onChanged: () => void) {
    this.#real = real;
    this.#clock = clock;
    this.#floor = floor;
    this.#newId = newId;
    this.#log = log;
    this.#onChanged = onChanged;
  }

  /** Looks once; called every few seconds. */
  async look(): Promise<void> {
    if (this.#isNoting) return;
    const change = this.#real.look();
    if (change.kind === 'none') return;
    if (change.kind === 'slept') {
      this.#log.warn({ sleptMs: change.byMs }, 'the machine slept; what fell due meanwhile is called now');
      this.#onChanged();
      return;
    }
    this.#isNoting = true;
    try {
      const byMs = Math.round(change.byMs * this.#clock.pace);
      const outcome = await this.#floor.submit({
        commandId: this.#newId(),
        deviceId: HOUSE_DEVICE_ID,
        stationId: null,
        tap: null,
        command: { type: 'noteClockJump', byMs },
      });
      if (!outcome.ok) return;
      this.#real.follow(change.byMs);
      this.#log.warn({ byMs: change.byMs }, 'the clock of this machine was set; everything on the floor keeps the time it had left');
      this.#onChanged();
    } finally {
      this.#isNoting = false;
    }
  }
}
