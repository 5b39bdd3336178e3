import { nextSound, type CallToSound, type NextSound } from '../../shared/floor/sounding.ts';
import type { CallLevel } from '../../shared/floor/events.ts';
import type { HouseClock } from '../clock/house-clock.ts';
import { AlarmClock, type Timers } from './alarm-clock.ts';
import type { Floor } from './floor.ts';

/** A device that has not said within so long that it sounded is asked again, or another one is. Real time. */
const ANSWER_MS = 4_000;
/** Two bursts are never closer than a burst lasts, whatever the pace. Real time. */
const SPACING_MS = 3_000;

/** A burst for a device to sound. */
export interface SoundOrder {
  readonly soundId: string;
  readonly burst: CallLevel;
  readonly calls: readonly CallToSound[];
}

/** Whoever can make a device sound. False where no device can at present. */
export type SoundOutlet = (order: SoundOrder) => boolean;

/**
 * Has the bursts sounded by one device at a time, and takes note of those that were. Nothing counts as sounded before a
 * device says so; what waits for a device sounds in one group as soon as there is one.
 */
export class Sounder {
  readonly #floor: Floor;
  readonly #clock: Pick<HouseClock, 'nowMs' | 'realUntilMs' | 'monotonicMs'>;
  readonly #newId: () => string;
  readonly #outlet: SoundOutlet;
  readonly #alarm: AlarmClock;
  readonly #stop: () => void;
  #ordered: { readonly order: SoundOrder; readonly monotonicMs: number } | null = null;
  #lastOrderMonotonicMs = Number.NEGATIVE_INFINITY;

  constructor(
    floor: Floor,
    clock: Pick<HouseClock, 'nowMs' | 'realUntilMs' | 'monotonicMs'>,
    timers: Timers,
    newId: () => string,
    outlet: SoundOutlet,
  ) {
    this.#floor = floor;
    this.#clock = clock;
    this.#newId = newId;
    this.#outlet = outlet;
    this.#alarm = new AlarmClock(timers, () => this.look());
    this.#stop = floor.onCommitted(() => this.look());
  }

  /** Orders what is to sound now, and sets the alarm for what comes next. Also called when a device comes or goes. */
  look(): void {
    const monotonicMs = this.#clock.monotonicMs();
    if (this.#ordered !== null) {
      const leftMs = this.#ordered.monotonicMs + ANSWER_MS - monotonicMs;
      if (leftMs > 0) return this.#alarm.setMs(leftMs);
      this.#ordered = null;
    }
    const next = nextSound(this.#floor.state, this.#clock.nowMs());
    if (next === null) return this.#alarm.setMs(null);
    const waitMs = Math.max(this.#clock.realUntilMs(next.atMs), this.#lastOrderMonotonicMs + SPACING_MS - monotonicMs);
    if (waitMs > 0) return this.#alarm.setMs(waitMs);
    this.#order(next, monotonicMs);
  }

  /** A device says that it sounded an order. Said twice, or too late, it is noted once or not at all. */
  async sounded(soundId: string, deviceId: string): Promise<void> {
    const order = this.#ordered?.order;
    if (order === undefined || order.soundId !== soundId) return;
    const { burst, calls } = order;
    await this.#floor.submit({
      commandId: soundId,
      deviceId,
      stationId: null,
      tap: null,
      command: { type: 'noteSounded', burst, calls: [...calls] },
    });
    // Said twice, and slowly written: by now another order may be out.
    if (this.#ordered?.order.soundId === soundId) this.#ordered = null;
    this.look();
  }

  stop(): void {
    this.#stop();
    this.#alarm.setMs(null);
  }

  #order(next: NextSound, monotonicMs: number): void {
    const order: SoundOrder = { soundId: this.#newId(), burst: next.burst, calls: next.calls };
    // With no device to sound it, it waits for one: `look` is called when one comes.
    if (!this.#outlet(order)) return this.#alarm.setMs(null);
    this.#ordered = { order, monotonicMs };
    this.#lastOrderMonotonicMs = monotonicMs;
    this.#alarm.setMs(ANSWER_MS);
  }
}
