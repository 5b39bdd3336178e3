import { NO_INSTANT_S, NEVER_S, type CompiledDay } from './compiled-day.ts';
import { NOWHERE, type CompiledHold } from './compiled-holds.ts';
import { NO_MOST_S, NO_TARGET_S } from './compiled-lags.ts';
import { priceOfAge, priceOfGap, priceOfServing, priceOfWishes } from './day-costs.ts';
import { OPEN, type DayPlan } from './day-plan.ts';
import type { Room } from './room.ts';
import { TwinHolds } from './twin-holds.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

const SCARCELY = 1e-6;
/** Instants tried with each block, the best first. */
const MOST_TRIED = 3;

/** Moves single blocks between their neighbours to where lags, goals and wishes cost least; everything else stays. */
export class Nudger {
  readonly #plan: DayPlan;
  readonly #day: CompiledDay;
  readonly #twins: TwinHolds;

  constructor(plan: DayPlan) {
    this.#plan = plan;
    this.#day = plan.day;
    this.#twins = new TwinHolds(plan);
  }

  /** Moves a block to the best place that it finds. Whether it moved. */
  nudge(block: number): boolean {
    if (this.#day.fixedS[block] !== NO_INSTANT_S || this.#plan.stands[block] === 0 || this.#plan.isForced[block] === 1) return false;
    const wasS = this.#plan.startS[block] as number;
    const wasPrice = this.#price(block, wasS);
    const lowS = this.#lowS(block);
    const highS = this.#highS(block);
    const wanted = this.#turningPoints(block, lowS, highS)
      .map((atS) => ({ atS, price: this.#price(block, atS) }))
      .filter(({ price }) => price < wasPrice - SCARCELY)
      .sort((one, other) => one.price - other.price || one.atS - other.atS);
    if (wanted.length === 0) return false;
    this.#plan.takeUp(block);
    let bestS = wasS;
    let least = wasPrice - SCARCELY;
    for (const { atS, price } of wanted.slice(0, MOST_TRIED)) {
      if (price >= least) break;
      for (const foundS of [this.#roomAfterS(block, atS, highS), this.#roomBeforeS(block, atS, lowS)]) {
        if (foundS === null) continue;
        const found = this.#price(block, foundS);
        if (found >= least) continue;
        least = found;
        bestS = foundS;
      }
    }
    this.#plan.put(block, bestS);
    return bestS !== wasS;
  }

  /**
   * Moves a block as late as what waits for it wants it, if there is room; what it has to wait for is not asked, for it may follow. Whether
   * it moved.
   */
  holdBack(block: number): boolean {
    if (this.#day.fixedS[block] !== NO_INSTANT_S || this.#plan.stands[block] === 0 || this.#plan.isForced[block] === 1) return false;
    const wasS = this.#plan.startS[block] as number;
    const wantedS = this.#wantedByWaitingS(block);
    if (wantedS <= wasS || wantedS >= NEVER_S) return false;
    this.#plan.takeUp(block);
    const foundS = this.#roomBeforeS(block, wantedS, wasS);
    this.#plan.put(block, foundS ?? wasS);
    return foundS !== null && foundS !== wasS;
  }

  /** The latest start that suits all that waits for a block; never before where it is if something waits past its target. */
  #wantedByWaitingS(block: number): number {
    const { lags, goalsOf, goals, pinnedS } = this.#day;
    const { startS } = this.#plan;
    let wantedS = pinnedS[block] === NO_INSTANT_S ? NEVER_S : (pinnedS[block] as number);
    for (const lag of lags.outOf[block] as Int32Array) {
      const targetS = lags.targetS[lag] as number;
      const gapS = targetS === NO_TARGET_S ? (lags.minS[lag] as number) : Math.max(targetS, lags.minS[lag] as number);
      wantedS = Math.min(wantedS, (startS[lags.to[lag] as number] as number) - gapS);
    }
    for (const index of goalsOf[block] as Int32Array) {
      const goal = goals[index];
      if (goal?.block === block) wantedS = Math.min(wantedS, goal.dueS);
    }
    return wantedS;
  }

  #price(block: number, startS: number): number {
    const day = this.#day;
    const { lags } = day;
    const starts = this.#plan.startS;
    let sum = priceOfWishes(day, block, startS);
    for (const lag of lags.outOf[block] as Int32Array) sum += priceOfGap(day, lag, (starts[lags.to[lag] as number] as number) - startS);
    for (const lag of lags.into[block] as Int32Array) sum += priceOfGap(day, lag, startS - (starts[lags.from[lag] as number] as number));
    for (const index of day.goalsOf[block] as Int32Array) {
      const goal = day.goals[index];
      if (goal?.block === block) sum += priceOfServing(goal, startS);
      if (goal?.freshBlock === block) sum += priceOfAge(goal, startS);
    }
    return sum;
  }

  #lowS(block: number): number {
    const { lags, releaseS } = this.#day;
    const { startS } = this.#plan;
    let lowS = releaseS[block] as number;
    for (const lag of lags.into[block] as Int32Array)
      lowS = Math.max(lowS, (startS[lags.from[lag] as number] as number) + (lags.minS[lag] as number));
    for (const lag of lags.outOf[block] as Int32Array) {
      const mostS = lags.mostS[lag] as number;
      const toS = startS[lags.to[lag] as number] as number;
      // What is lost already is dear enough; it need not be kept from getting better bit by bit.
      if (mostS < NO_MOST_S && (startS[block] as number) >= toS - mostS) lowS = Math.max(lowS, toS - mostS);
    }
    return lowS;
  }

  #highS(block: number): number {
    const { lags } = this.#day;
    const { startS } = this.#plan;
    let highS = NEVER_S;
    for (const lag of lags.outOf[block] as Int32Array)
      highS = Math.min(highS, (startS[lags.to[lag] as number] as number) - (lags.minS[lag] as number));
    for (const lag of lags.into[block] as Int32Array) {
      const lastS = (startS[lags.from[lag] as number] as number) + (lags.mostS[lag] as number);
      if ((startS[block] as number) <= lastS) highS = Math.min(highS, lastS);
    }
    return highS;
  }

  /** The instants at which what a block costs can be least: between them it goes straight. */
  #turningPoints(block: number, lowS: number, highS: number): number[] {
    const { lags, goalsOf, goals, wishesOf } = this.#day;
    const { startS } = this.#plan;
    const points = [lowS, highS];
    for (const lag of lags.outOf[block] as Int32Array) {
      if (lags.targetS[lag] !== NO_TARGET_S) points.push((startS[lags.to[lag] as number] as number) - (lags.targetS[lag] as number));
    }
    for (const lag of lags.into[block] as Int32Array) {
      if (lags.targetS[lag] !== NO_TARGET_S) points.push((startS[lags.from[lag] as number] as number) + (lags.targetS[lag] as number));
    }
    for (const index of goalsOf[block] as Int32Array) {
      const goal = goals[index];
      if (goal?.block === block) points.push(goal.dueS);
      if (goal?.freshBlock === block) points.push(goal.notBeforeS);
    }
    for (const { atS } of wishesOf[block] as readonly { readonly atS: number }[]) points.push(atS);
    return points.filter((atS) => atS >= lowS && atS <= highS && atS < NEVER_S);
  }

  #roomAfterS(block: number, fromS: number, highS: number): number | null {
    const holds = this.#day.holdsOf[block] as readonly CompiledHold[];
    let startS = fromS;
    for (let index = 0; index < holds.length;) {
      const stay = this.#stayOf(holds[index] as CompiledHold, block, startS);
      index += 1;
      if (stay === null) continue;
      const untilS = stay.room.blockedUntil(stay.fromS, stay.toS, stay.amount, stay.state);
      if (untilS <= stay.fromS) continue;
      // One that begins with another block only grows longer.
      if (!stay.beginsHere || startS + untilS - stay.fromS > highS) return null;
      startS += untilS - stay.fromS;
      index = 0;
    }
    return this.#twins.tooMuch(block, startS) === null ? startS : null;
  }

  #roomBeforeS(block: number, fromS: number, lowS: number): number | null {
    const holds = this.#day.holdsOf[block] as readonly CompiledHold[];
    let startS = fromS;
    for (let index = 0; index < holds.length;) {
      const stay = this.#stayOf(holds[index] as CompiledHold, block, startS);
      index += 1;
      if (stay === null) continue;
      const beforeS = stay.room.blockedFrom(stay.fromS, stay.toS, stay.amount, stay.state);
      if (beforeS >= stay.toS) continue;
      if (!stay.endsHere || startS - (stay.toS - beforeS) < lowS) return null;
      startS -= stay.toS - beforeS;
      index = 0;
    }
    return this.#twins.tooMuch(block, startS) === null ? startS : null;
  }

  /** What a hold would take with the block at an instant; null where it takes nothing. */
  #stayOf(hold: CompiledHold, block: number, startS: number): Stay | null {
    const place = this.#plan.placeOf(hold);
    const resource = place === OPEN ? NOWHERE : (hold.resources[place] as number);
    if (resource === NOWHERE) return null;
    const starts = this.#plan.startS;
    // What has begun is booked so far already.
    const fromS = Math.max((hold.from === block ? startS : (starts[hold.from] as number)) + hold.fromOffsetS, hold.begunUntilS);
    const toS = (hold.to === block ? startS : (starts[hold.to] as number)) + hold.toOffsetS;
    if (toS <= fromS) return null;
    return {
      room: this.#plan.rooms[resource] as Room,
      fromS,
      toS,
      amount: hold.amounts[place] as number,
      state: hold.states[place] as number,
      beginsHere: hold.from === block,
      endsHere: hold.to === block,
    };
  }
}

interface Stay {
  readonly room: Room;
  readonly fromS: number;
  readonly toS: number;
  readonly amount: number;
  readonly state: number;
  readonly beginsHere: boolean;
  readonly endsHere: boolean;
}
