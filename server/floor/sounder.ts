import type { HouseCommand } from '../../shared/floor/commands.ts';
import type { CallLevel } from '../../shared/floor/events.ts';
import { waitingTestMs } from '../../shared/floor/sound-test.ts';
import { nextSound, type CallToSound } from '../../shared/floor/sounding.ts';
import type { HouseClock } from '../clock/house-clock.ts';
import { AlarmClock, type Timers } from './alarm-clock.ts';
import type { Floor } from './floor.ts';
import { houseHours } from './house-hours.ts';

/** A device that has not said within so long that it sounded is asked again, or another one is. Real time. */
const ANSWER_MS = 4_000;
/** Two bursts are never closer than a burst lasts, whatever the pace. Real time. */
const SPACING_MS = 3_000;

/** A burst for a device to sound. */
export interface SoundOrder {
  readonly soundId: string;
  readonly burst: CallLevel;
  readonly volumePct: number;
  /** A test is about no call. */
  readonly isTest: boolean;
  readonly calls: readonly CallToSound[];
}

/** Whoever can make a device sound: says which one it asked, null where none can at present. */
export type SoundOutlet = (order: SoundOrder) => string | null;

/** An order that is out, and with whom. */
interface Ordered {
  readonly order: SoundOrder;
  readonly deviceId: string;
  readonly monotonicMs: number;
}

/**
 * Has the bursts sounded by one device at a time, and takes note of those that were. Nothing counts as sounded before a
 * device says so; what waits for a device sounds in one group as soon as there is one. A test of the loudspeakers sounds
 * when nothing else has to.
 */
export class Sounder {
  readonly #floor: Floor;
  readonly #clock: Pick<HouseClock, 'nowMs' | 'realUntilMs' | 'monotonicMs'>;
  readonly #newId: () => string;
  readonly #outlet: SoundOutlet;
  readonly #onUnanswered: (deviceId: string) => void;
  readonly #alarm: AlarmClock;
  readonly #stop: () => void;
  #ordered: Ordered | null = null;
  #lastOrderMonotonicMs = Number.NEGATIVE_INFINITY;

  constructor(
    floor: Floor,
    clock: Pick<HouseClock, 'nowMs' | 'realUntilMs' | 'monotonicMs'>,
    timers: Timers,
    newId: () => string,
    outlet: SoundOutlet,
    /** A device was asked to sound and has not said that it did. */
    onUnanswered: (deviceId: string) => void,
  ) {
    this.#floor = floor;
    this.#clock = clock;
    this.#newId = newId;
    this.#outlet = outlet;
    this.#onUnanswered = onUnanswered;
    this.#alarm = new AlarmClock(timers, () => this.look());
    this.#stop = floor.onCommitted(() => this.look());
  }

  /** Orders what is to sound now, and sets the alarm for what comes next. Also called when a device comes or goes. */
  look(): void {
    const monotonicMs = this.#clock.monotonicMs();
    if (this.#ordered !== null) {
      const leftMs = this.#ordered.monotonicMs + ANSWER_MS - monotonicMs;
      if (leftMs > 0) return this.#alarm.setMs(leftMs);
      const { deviceId } = this.#ordered;
      this.#ordered = null;
      this.#onUnanswered(deviceId);
      // Who listens may have looked already.
      if (this.#ordered !== null) return;
    }
    const { state } = this.#floor;
    const nowMs = this.#clock.nowMs();
    const hours = houseHours(state.house?.document ?? null);
    const spacingMs = this.#lastOrderMonotonicMs + SPACING_MS - monotonicMs;
    const next = nextSound(state, nowMs, hours);
    const nextWaitMs = next === null ? Number.POSITIVE_INFINITY : Math.max(this.#clock.realUntilMs(next.atMs), spacingMs);
    if (next !== null && nextWaitMs <= 0) {
      const { burst, volumePct, calls } = next;
      return this.#order({ soundId: this.#newId(), burst, volumePct, isTest: false, calls }, monotonicMs);
    }
    const testMs = waitingTestMs(state, hours, nowMs);
    const testWaitMs = testMs === null ? Number.POSITIVE_INFINITY : Math.max(this.#clock.realUntilMs(testMs), spacingMs);
    if (testWaitMs <= 0)
      return this.#order(
        { soundId: this.#newId(), burst: 'call', volumePct: hours.volumePct(nowMs), isTest: true, calls: [] },
        monotonicMs,
      );
    const waitMs = Math.min(nextWaitMs, testWaitMs);
    this.#alarm.setMs(waitMs === Number.POSITIVE_INFINITY ? null : waitMs);
  }

  /** A device says that it sounded an order. Said twice, too late, or by another one, it is noted once or not at all. */
  async sounded(soundId: string, deviceId: string): Promise<void> {
    const ordered = this.#ordered;
    if (ordered === null || ordered.order.soundId !== soundId || ordered.deviceId !== deviceId) return;
    await this.#floor.submit({ commandId: soundId, deviceId, stationId: null, tap: null, command: noteOf(ordered.order) });
    // Said twice, and slowly written: by now another order may be out.
    if (this.#ordered?.order.soundId === soundId) this.#ordered = null;
    this.look();
  }

  stop(): void {
    this.#stop();
    this.#alarm.setMs(null);
  }

  #order(order: SoundOrder, monotonicMs: number): void {
    const deviceId = this.#outlet(order);
    // With no device to sound it, it waits for one: `look` is called when one comes.
    if (deviceId === null) return this.#alarm.setMs(null);
    this.#ordered = { order, deviceId, monotonicMs };
    this.#lastOrderMonotonicMs = monotonicMs;
    this.#alarm.setMs(ANSWER_MS);
  }
}

function noteOf({ isTest, burst, calls }: SoundOrder): HouseCommand {
  return isTest ? { type: 'noteSoundTestSounded' } : { type: 'noteSounded', burst, calls: [...calls] };
}
