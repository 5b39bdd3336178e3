import { dailyTestMs } from '../../shared/floor/sound-test.ts';
import type { HouseClock } from '../clock/house-clock.ts';
import { AlarmClock, type Timers } from './alarm-clock.ts';
import type { Floor } from './floor.ts';
import { HOUSE_DEVICE_ID } from './house-device.ts';
import { houseHours } from './house-hours.ts';

/** How soon a test is asked for again that the floor did not take. Real time. */
const RETRY_MS = 2_000;

/**
 * Asks for the day's test of the loudspeakers at its time, or as soon as a device can sound where none was asked for
 * since. Whether one is due follows from state and time: after a restart nothing is asked twice.
 */
export class SoundTester {
  readonly #floor: Floor;
  readonly #clock: Pick<HouseClock, 'nowMs' | 'realUntilMs'>;
  readonly #newId: () => string;
  readonly #canSound: () => boolean;
  readonly #alarm: AlarmClock;
  readonly #stop: () => void;
  #isAsking = false;
  #isStopped = false;

  constructor(
    floor: Floor,
    clock: Pick<HouseClock, 'nowMs' | 'realUntilMs'>,
    timers: Timers,
    newId: () => string,
    canSound: () => boolean,
  ) {
    this.#floor = floor;
    this.#clock = clock;
    this.#newId = newId;
    this.#canSound = canSound;
    this.#alarm = new AlarmClock(timers, () => this.look());
    this.#stop = floor.onCommitted(() => this.look());
  }

  /** Asks for what is due, and sets the alarm for what comes next. Also called when a device comes or goes. */
  look(): void {
    if (this.#isAsking || this.#isStopped) return;
    const { state } = this.#floor;
    const dueMs = this.#canSound() ? dailyTestMs(state, houseHours(state.house?.document ?? null), this.#clock.nowMs()) : null;
    if (dueMs === null) return this.#alarm.setMs(null);
    const waitMs = this.#clock.realUntilMs(dueMs);
    if (waitMs > 0) return this.#alarm.setMs(waitMs);
    this.#alarm.setMs(null);
    void this.#ask();
  }

  stop(): void {
    this.#isStopped = true;
    this.#stop();
    this.#alarm.setMs(null);
  }

  async #ask(): Promise<void> {
    this.#isAsking = true;
    const outcome = await this.#floor.submit({
      commandId: this.#newId(),
      deviceId: HOUSE_DEVICE_ID,
      stationId: null,
      tap: null,
      command: { type: 'askDailySoundTest' },
    });
    this.#isAsking = false;
    if (outcome.ok) this.look();
    else if (!this.#isStopped) this.#alarm.setMs(RETRY_MS);
  }
}
