import { Crowding, LEVELLED_KIND } from './crowding.ts';
import type { PlanResource } from './problem.ts';
import { StateLine } from './state-line.ts';
import { Timeline } from './timeline.ts';

/** Not in any state. */
export const NO_STATE = -1;

/**
 * Where a calendar ends with less than there is at other times, all of it is there again so long after its last step: what fits nowhere
 * before is planned then, and is as late as that. Nothing is ever left out of a plan.
 */
const OVERTIME_AFTER_S = 86_400;
const MINUTE_S = 60;

/** What is put down on one resource: its room over time, its states, and what of its calm that costs. */
export class Room {
  /** The most that there ever is of it. */
  readonly most: number;
  readonly #timeline: Timeline;
  readonly #states: StateLine | null;
  readonly #idlePrice: number;
  readonly #crowding: Crowding | null;

  constructor(resource: PlanResource) {
    const calendar = resource.calendar ?? [];
    this.most = calendar.reduce((most, { capacity }) => Math.max(most, capacity), resource.capacity);
    this.#timeline = new Timeline(resource.capacity, withOvertime(calendar, this.most));
    const isStated = resource.sharesOneState || resource.setupS !== null || resource.idlePrice > 0;
    this.#states = isStated ? new StateLine(resource.setupS, resource.stateAtFirst, resource.sharesOneState) : null;
    this.#idlePrice = resource.idlePrice;
    this.#crowding = resource.kind === LEVELLED_KIND ? new Crowding(resource.capacity) : null;
  }

  /** Whether what it costs may change with what is put down. */
  get isPriced(): boolean {
    return this.#crowding !== null || (this.#states !== null && this.#idlePrice > 0);
  }

  put(fromS: number, toS: number, amount: number, state: number): void {
    this.#timeline.take(fromS, toS, amount);
    this.#crowding?.add(fromS, toS, amount);
    if (state !== NO_STATE) this.#states?.add(fromS, toS, state);
  }

  takeAway(fromS: number, toS: number, amount: number, state: number): void {
    this.#timeline.take(fromS, toS, -amount);
    this.#crowding?.add(fromS, toS, -amount);
    if (state !== NO_STATE) this.#states?.remove(fromS, toS, state);
  }

  /** `fromS` where a stay fits; else the instant before which none that is as long can begin, if it begins at `fromS` or after. */
  blockedUntil(fromS: number, toS: number, amount: number, state: number): number {
    const untilS = this.#timeline.blockedUntil(fromS, toS, amount);
    if (state === NO_STATE || this.#states === null) return untilS;
    return Math.max(untilS, this.#states.blockedUntil(fromS, toS, state));
  }

  /** `toS` where a stay fits; else the instant after which none that is as long can end, if it ends at `toS` or before. */
  blockedFrom(fromS: number, toS: number, amount: number, state: number): number {
    const beforeS = this.#timeline.blockedFrom(fromS, toS, amount);
    if (state === NO_STATE || this.#states === null) return beforeS;
    return Math.min(beforeS, this.#states.blockedFrom(fromS, toS, state));
  }

  /** Seconds that lie at least between a stay in one state and the next in another; none where either has no state. */
  setupS(state: number, next: number): number {
    return state === NO_STATE || next === NO_STATE || this.#states === null ? 0 : this.#states.between(state, next);
  }

  /** What idling and crowding cost. */
  calmPrice(): number {
    const idle = this.#states === null || this.#idlePrice === 0 ? 0 : (this.#states.idleS() / MINUTE_S) * this.#idlePrice;
    return idle + (this.#crowding?.price() ?? 0);
  }
}

function withOvertime(
  calendar: readonly { readonly fromS: number; readonly capacity: number }[],
  most: number,
): readonly { readonly fromS: number; readonly capacity: number }[] {
  const last = calendar.at(-1);
  if (last === undefined || last.capacity >= most) return calendar;
  return [...calendar, { fromS: last.fromS + OVERTIME_AFTER_S, capacity: most }];
}
