import type { Hand } from './invented-floor.ts';
import type { Chance } from './chance.ts';

/** A pair of hands at a station, with the phone that lies there. */
interface Worker {
  readonly hand: Hand;
  freeMs: number;
}

/** Who works in the house: a pair of hands at each station, and a wall that sounds. Stations stand for people. */
export class Hands {
  readonly wall: Hand;
  readonly #workers = new Map<string, Worker>();
  readonly #first: Worker;

  constructor(stationIds: readonly string[], chance: Chance) {
    this.wall = { deviceId: chance.id(), stationId: null };
    for (const stationId of ['bench', ...stationIds.filter((id) => id !== 'bench')])
      this.#workers.set(stationId, { hand: { deviceId: chance.id(), stationId }, freeMs: 0 });
    this.#first = this.#workers.get('bench') ?? { hand: this.wall, freeMs: 0 };
  }

  at(stationId: string | null | undefined): Hand {
    return this.#worker(stationId).hand;
  }

  /** When the hands at a station are free again. */
  freeMs(stationId: string | null | undefined): number {
    return this.#worker(stationId).freeMs;
  }

  keepBusy(stationId: string | null | undefined, untilMs: number): void {
    const worker = this.#worker(stationId);
    worker.freeMs = Math.max(worker.freeMs, untilMs);
  }

  /** Some other station than one, whose hands are free. */
  helperFor(stationId: string | null | undefined, nowMs: number): Hand | null {
    const own = this.#worker(stationId);
    for (const worker of this.#workers.values()) if (worker !== own && worker.freeMs <= nowMs) return worker.hand;
    return null;
  }

  #worker(stationId: string | null | undefined): Worker {
    return this.#workers.get(stationId ?? '') ?? this.#first;
  }
}
