import { NO_STATE } from './room.ts';
import type { CompiledDay } from './compiled-day.ts';
import { NOWHERE, type CompiledHold } from './compiled-holds.ts';
import { OPEN, type DayPlan } from './day-plan.ts';
import type { Room } from './room.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Where the holds of one block are too much together. */
export interface TooMuch {
  readonly hold: CompiledHold;
  readonly fromS: number;
  readonly untilS: number;
}

interface Stay {
  readonly hold: CompiledHold;
  readonly resource: number;
  readonly fromS: number;
  readonly toS: number;
  readonly amount: number;
}

/** Holds of one block on one resource: each may have room by itself where they have none together. */
export class TwinHolds {
  readonly #plan: DayPlan;
  readonly #day: CompiledDay;

  constructor(plan: DayPlan) {
    this.#plan = plan;
    this.#day = plan.day;
  }

  /** Whether the holds of a block with twins have room together with the block at an instant; what is the matter if not. */
  tooMuch(block: number, startS: number): TooMuch | null {
    const twins = this.#day.twinsOf[block] as readonly CompiledHold[];
    if (twins.length === 0) return null;
    const stays = twins.flatMap((hold) => this.#stayOf(hold, block, startS));
    for (const stay of stays) {
      const found = this.#tooMuchOf(stay, stays);
      if (found !== null) return found;
    }
    return null;
  }

  /** From the begin of a stay to the next instant at which another one on its resource begins or ends, and on. */
  #tooMuchOf(stay: Stay, stays: readonly Stay[]): TooMuch | null {
    const others = stays.filter(
      (other) => other !== stay && other.resource === stay.resource && other.fromS < stay.toS && other.toS > stay.fromS,
    );
    if (others.length === 0) return null;
    const cuts = [stay.fromS, stay.toS, ...others.flatMap(({ fromS, toS }) => [fromS, toS])];
    const instants = [...new Set(cuts)].filter((atS) => atS >= stay.fromS && atS <= stay.toS).sort((one, other) => one - other);
    for (const [index, atS] of instants.slice(0, -1).entries()) {
      const nextS = instants[index + 1] as number;
      const together = others
        .filter(({ fromS, toS }) => fromS <= atS && toS >= nextS)
        .reduce((sum, { amount }) => sum + amount, stay.amount);
      const untilS = (this.#plan.rooms[stay.resource] as Room).blockedUntil(atS, nextS, together, NO_STATE);
      if (untilS > atS) return { hold: stay.hold, fromS: atS, untilS };
    }
    return null;
  }

  #stayOf(hold: CompiledHold, block: number, startS: number): readonly Stay[] {
    const { stands, startS: starts } = this.#plan;
    const place = this.#plan.placeOf(hold);
    const resource = place === OPEN ? NOWHERE : (hold.resources[place] as number);
    if (resource === NOWHERE || (hold.from !== block && stands[hold.from] === 0)) return [];
    const beginS = hold.from === block ? startS : (starts[hold.from] as number);
    const endS = hold.to === block ? startS : stands[hold.to] === 1 ? (starts[hold.to] as number) : beginS + hold.leastGapS;
    const fromS = Math.max(beginS + hold.fromOffsetS, hold.begunUntilS);
    const toS = endS + hold.toOffsetS;
    return toS > fromS ? [{ hold, resource, fromS, toS, amount: hold.amounts[place] as number }] : [];
  }
}

/** By block: its holds that may be on a resource on which another of its holds may be, too. */
export function twinsOf(holdsOf: readonly (readonly CompiledHold[])[]): readonly (readonly CompiledHold[])[] {
  return holdsOf.map((holds) =>
    holds.filter((hold) =>
      holds.some((other) => other !== hold && other.resources.some((at) => at !== NOWHERE && hold.resources.includes(at))),
    ),
  );
}
