import { NO_INSTANT_S, NEVER_S, type CompiledDay } from './compiled-day.ts';
import { NOWHERE, type CompiledHold } from './compiled-holds.ts';
import { NO_MOST_S, NO_TARGET_S } from './compiled-lags.ts';
import { OPEN, type DayPlan } from './day-plan.ts';
import type { Random } from '../core/random.ts';
import type { Room } from './room.ts';
import { TwinHolds } from './twin-holds.ts';
import { WaitingHeap } from './waiting-heap.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** How blocks are put down. */
export interface Manner {
  /** So many seconds before the latest start that is still in time; Infinity: as soon as they can. Null: where they stood before. */
  readonly aheadS: number | null;
  /** Rests no longer than they must be. */
  readonly isTight: boolean;
  /** What came later than what it waits for asked is drawn after it, as far as there is room. */
  readonly isHeldBack: boolean;
  /** An option is liked less by up to so many seconds, by chance. */
  readonly whimS: number;
  /** Every option but the one that the plan had is liked less by so many seconds. */
  readonly otherOptionS: number;
}

/** A hold for which there is no room on the way, and until when. */
interface Blocked {
  readonly hold: CompiledHold;
  readonly untilS: number;
}

/** Attempts before the most of lags is given up, and before everything is: so many, and for each block so many more. */
const STRICT_STEPS = { first: 100, block: 12 };
const ALL_STEPS = { first: 1000, block: 60 };
const MINUTE_S = 60;

/**
 * Puts blocks into a plan, each at the earliest instant that suits it and at which lags, room and set-up hold. Where a most of a lag or
 * room on the way cannot be kept from where the block before stands, that one is raised: its lower bound grows until all agree. Bounds only
 * grow, so that it comes to an end; what stood already and hangs on them moves along. Where they find no agreement, for a most that nothing
 * could keep, it begins once more and lets the most be broken.
 */
export class Settler {
  readonly #plan: DayPlan;
  readonly #day: CompiledDay;
  readonly #random: Random;
  readonly #twins: TwinHolds;
  readonly #heap: WaitingHeap;
  readonly #lowS: Int32Array;
  readonly #lowLook: Int32Array;
  /** Where a block would like to begin, if nothing else is wanted of it. */
  readonly #likesS: Int32Array;
  readonly #likesLook: Int32Array;
  /** Whether it was lifted to be put down in a manner; what only hangs on those stays near where it was. */
  readonly #chosenLook: Int32Array;
  /** All that was taken up since it began. */
  readonly #touched: number[] = [];
  #look = 0;
  #boundsLook = 0;
  #chosen = 0;

  constructor(plan: DayPlan, random: Random) {
    this.#plan = plan;
    this.#day = plan.day;
    this.#random = random;
    this.#twins = new TwinHolds(plan);
    this.#heap = new WaitingHeap(plan.day.count);
    this.#lowS = new Int32Array(plan.day.count);
    this.#lowLook = new Int32Array(plan.day.count);
    this.#likesS = new Int32Array(plan.day.count);
    this.#likesLook = new Int32Array(plan.day.count);
    this.#chosenLook = new Int32Array(plan.day.count);
  }

  /** Begins anew: no bounds, nothing waits. */
  begin(keys: Int32Array): void {
    this.#look += 1;
    this.#boundsLook += 1;
    this.#chosen = 0;
    this.#touched.length = 0;
    this.#heap.clear();
    this.#heap.orderBy(keys);
  }

  /** Takes a block up, or has one wait that does not stand yet. It likes to begin at `likesS` where a manner leaves it to that. */
  lift(block: number, likesS: number = this.#plan.startS[block] as number): void {
    this.#chosenLook[block] = this.#look;
    this.#chosen += 1;
    this.#takeUp(block, likesS);
  }

  /** Whether a block can stand at an instant beside all that stands, as far as releases, minimum lags and room go. Its choices are made. */
  fitsAt(block: number, startS: number): boolean {
    const { lags, releaseS } = this.#day;
    const { stands, startS: starts } = this.#plan;
    if (startS < (releaseS[block] as number)) return false;
    for (const lag of lags.into[block] as Int32Array) {
      const from = lags.from[lag] as number;
      if (stands[from] === 1 && startS < (starts[from] as number) + (lags.minS[lag] as number)) return false;
    }
    for (const lag of lags.outOf[block] as Int32Array) {
      const to = lags.to[lag] as number;
      if (stands[to] === 1 && (starts[to] as number) < startS + (lags.minS[lag] as number)) return false;
    }
    return this.#withRoomS(block, startS) === startS && this.#blockedBefore(block, startS) === null;
  }

  /** Puts down all that wait. False where it found no way; then the plan has to be undone. */
  settle(manner: Manner): boolean {
    const strictSteps = STRICT_STEPS.first + this.#chosen * STRICT_STEPS.block;
    const allSteps = ALL_STEPS.first + this.#chosen * ALL_STEPS.block;
    for (let steps = 0; !this.#heap.isEmpty; steps += 1) {
      if (steps > allSteps) return false;
      if (steps === strictSteps) this.#startOver();
      this.#putDown(this.#heap.pop(), manner, steps < strictSteps);
    }
    return true;
  }

  /** Forgets how far blocks were raised, for those that chase each other later and later would stay there, and has all of them wait again. */
  #startOver(): void {
    this.#boundsLook += 1;
    for (const block of this.#touched) this.#takeUp(block, this.#likesS[block] as number);
  }

  #takeUp(block: number, likesS: number): void {
    if (this.#plan.stands[block] === 1) this.#plan.takeUp(block);
    if (this.#likesLook[block] !== this.#look) this.#touched.push(block);
    this.#likesS[block] = likesS;
    this.#likesLook[block] = this.#look;
    this.#heap.push(block);
  }

  /** A block may not begin before an instant: it is taken up again. */
  #raise(block: number, lowS: number): void {
    this.#lowS[block] = Math.max(this.#lowOf(block), lowS);
    this.#lowLook[block] = this.#boundsLook;
    if (this.#plan.stands[block] === 1) this.#takeUp(block, this.#likesOf(block));
  }

  #putDown(block: number, manner: Manner, isStrict: boolean): void {
    const plan = this.#plan;
    if (plan.stands[block] === 1) return;
    const fixedS = this.#day.fixedS[block] as number;
    if (fixedS !== NO_INSTANT_S) {
      this.#chooseFor(block, fixedS, manner);
      plan.put(block, fixedS);
      return;
    }
    const lowS = this.#boundS(block);
    const wantedS = this.#wantedS(block, lowS, manner);
    this.#chooseFor(block, wantedS, manner);
    let startS = this.#withRoomS(block, wantedS);
    let blocked = this.#blockedBefore(block, startS);
    if (blocked !== null && startS > lowS) {
      // Perhaps it only came too late for room on the way to it because it would rather.
      const soonerS = this.#withRoomS(block, lowS);
      if (soonerS < startS) {
        startS = soonerS;
        blocked = this.#blockedBefore(block, startS);
      }
    }
    plan.force(block, false);
    // Each that is raised is out of the way, so that the next is found.
    while (blocked !== null && this.#makeWay(block, startS, blocked, isStrict)) blocked = this.#blockedBefore(block, startS);
    if (isStrict) this.#holdBackThoseBefore(block, startS);
    plan.put(block, startS);
    this.#pushThoseAfter(block, startS);
  }

  #lowOf(block: number): number {
    return this.#lowLook[block] === this.#boundsLook ? (this.#lowS[block] as number) : NO_INSTANT_S;
  }

  #likesOf(block: number): number {
    return this.#likesLook[block] === this.#look ? (this.#likesS[block] as number) : (this.#plan.startS[block] as number);
  }

  /** The earliest that lags to what stands allow. */
  #boundS(block: number): number {
    const { lags, releaseS } = this.#day;
    const { stands, startS } = this.#plan;
    let lowS = Math.max(this.#lowOf(block), releaseS[block] as number);
    for (const lag of lags.into[block] as Int32Array) {
      const from = lags.from[lag] as number;
      if (stands[from] === 1) lowS = Math.max(lowS, (startS[from] as number) + (lags.minS[lag] as number));
    }
    for (const lag of lags.outOf[block] as Int32Array) {
      const to = lags.to[lag] as number;
      const mostS = lags.mostS[lag] as number;
      if (stands[to] === 1 && mostS < NO_MOST_S) lowS = Math.max(lowS, (startS[to] as number) - mostS);
    }
    return lowS;
  }

  /** When it would begin if there were room everywhere. */
  #wantedS(block: number, lowS: number, manner: Manner): number {
    const pinnedS = this.#day.pinnedS[block] as number;
    if (pinnedS !== NO_INSTANT_S) return Math.max(lowS, pinnedS);
    const { lags } = this.#day;
    const { stands, startS } = this.#plan;
    let wantedS = Math.max(lowS, this.#likedS(block, manner));
    let lastS = NEVER_S;
    const isKept = manner.aheadS === null || this.#chosenLook[block] !== this.#look;
    for (const lag of lags.into[block] as Int32Array) {
      const from = lags.from[lag] as number;
      if (stands[from] === 0) continue;
      const fromS = startS[from] as number;
      if (!manner.isTight && !isKept && lags.targetS[lag] !== NO_TARGET_S)
        wantedS = Math.max(wantedS, fromS + (lags.targetS[lag] as number));
      lastS = Math.min(lastS, fromS + (lags.mostS[lag] as number));
    }
    for (const lag of lags.outOf[block] as Int32Array) {
      const to = lags.to[lag] as number;
      if (stands[to] === 1) lastS = Math.min(lastS, (startS[to] as number) - (lags.minS[lag] as number));
    }
    return Math.max(lowS, Math.min(wantedS, lastS));
  }

  #likedS(block: number, { aheadS }: Manner): number {
    if (aheadS === null || this.#chosenLook[block] !== this.#look) return this.#likesOf(block);
    const latestS = this.#day.latestS[block] as number;
    return latestS === NEVER_S || aheadS === Infinity ? NO_INSTANT_S : latestS - aheadS;
  }

  /** Makes the choices of a block that are open: the option with which it can begin soonest, those liked less a little later. */
  #chooseFor(block: number, wantedS: number, manner: Manner): void {
    for (const choice of this.#day.choicesOf[block] as Int32Array) {
      if (this.#plan.option[choice] !== OPEN) continue;
      const options = this.#day.optionsOf[choice] as Int32Array;
      let best = options[0] as number;
      if (options.length > 1) {
        let leastS = Infinity;
        for (const option of options) {
          this.#plan.option[choice] = option;
          const scoreS = this.#withRoomS(block, wantedS) + this.#dislikeS(choice, option, manner);
          if (scoreS < leastS) {
            leastS = scoreS;
            best = option;
          }
        }
        this.#plan.option[choice] = OPEN;
      }
      this.#plan.choose(choice, best);
    }
  }

  #dislikeS(choice: number, option: number, { whimS, otherOptionS }: Manner): number {
    const facts = this.#day.problem.choices[choice];
    const isOther = facts !== undefined && facts.previousOption !== null && facts.previousOption !== option;
    return (facts?.options[option]?.price ?? 0) * MINUTE_S + (whimS > 0 ? this.#random.share() * whimS : 0) + (isOther ? otherOptionS : 0);
  }

  /** The earliest start from an instant on with room for all that the block holds by itself or until one that stands. */
  #withRoomS(block: number, fromS: number): number {
    const holds = this.#day.holdsOf[block] as readonly CompiledHold[];
    let startS = fromS;
    for (let index = 0; index < holds.length;) {
      const hold = holds[index] as CompiledHold;
      const byS = hold.from === block ? this.#shortS(hold, startS) : 0;
      if (byS === Infinity) return startS;
      startS += byS;
      index = byS > 0 ? 0 : index + 1;
      if (index === holds.length) {
        const twinsByS = this.#twinsShortS(block, startS);
        startS += twinsByS;
        if (twinsByS > 0) index = 0;
      }
    }
    return startS;
  }

  /** By how much a block has to begin later for those of its holds that begin with it to have room together. */
  #twinsShortS(block: number, startS: number): number {
    const found = this.#twins.tooMuch(block, startS);
    return found === null || found.hold.from !== block || found.untilS === Infinity ? 0 : found.untilS - found.fromS;
  }

  /** By how much a hold has to begin later than from a start of its first block; Infinity where it never finds room. */
  #shortS(hold: CompiledHold, startS: number): number {
    const place = this.#plan.placeOf(hold);
    if (place === OPEN) return 0;
    const resource = hold.resources[place] as number;
    if (resource === NOWHERE) return 0;
    const fromS = startS + hold.fromOffsetS;
    let toS = startS + hold.toOffsetS;
    if (hold.to !== hold.from) {
      const endS = this.#plan.stands[hold.to] === 1 ? (this.#plan.startS[hold.to] as number) : startS + hold.leastGapS;
      toS = endS + hold.toOffsetS;
    }
    if (toS <= fromS) return 0;
    return (
      (this.#plan.rooms[resource] as Room).blockedUntil(fromS, toS, hold.amounts[place] as number, hold.states[place] as number) - fromS
    );
  }

  /** The first hold from a block that stands to this one for which there is no room on the way. */
  #blockedBefore(block: number, startS: number): Blocked | null {
    for (const hold of this.#day.holdsOf[block] as readonly CompiledHold[]) {
      if (hold.to !== block || hold.from === block || this.#plan.stands[hold.from] === 0) continue;
      const place = this.#plan.placeOf(hold);
      const resource = place === OPEN ? NOWHERE : (hold.resources[place] as number);
      if (resource === NOWHERE) continue;
      // What has begun is booked so far already.
      const fromS = Math.max(this.#plan.holdFromS(hold), hold.begunUntilS);
      const toS = startS + hold.toOffsetS;
      if (toS <= fromS) continue;
      const amount = hold.amounts[place] as number;
      const untilS = (this.#plan.rooms[resource] as Room).blockedUntil(fromS, toS, amount, hold.states[place] as number);
      if (untilS > fromS) return { hold, untilS };
    }
    return this.#twins.tooMuch(block, startS);
  }

  /**
   * The block before comes later, or else whoever is in the way; even past the most of a lag, for room is not a matter of price. False where
   * nobody can.
   */
  #makeWay(block: number, startS: number, { hold, untilS }: Blocked, isStrict: boolean): boolean {
    const lowS = untilS - hold.fromOffsetS;
    const canMove = hold.from !== block && untilS < Infinity;
    if (canMove && isStrict && this.#canBeRaised(hold.from, lowS, true)) this.#raise(hold.from, lowS);
    else if (isStrict && this.#clear(block, startS, hold, true)) return true;
    else if (canMove && this.#canBeRaised(hold.from, lowS, false)) this.#raise(hold.from, lowS);
    else if (!isStrict || !this.#clear(block, startS, hold, false)) {
      this.#plan.force(block, true);
      return false;
    }
    return true;
  }

  /** Raises whatever else stays on the hold's resource meanwhile and can be raised, keeping the most of its lags or not. Whether that helps. */
  #clear(block: number, startS: number, hold: CompiledHold, isStrict: boolean): boolean {
    const place = this.#plan.placeOf(hold);
    const resource = hold.resources[place] as number;
    const room = this.#plan.rooms[resource] as Room;
    const fromS = this.#plan.holdFromS(hold);
    const toS = startS + hold.toOffsetS;
    for (const other of this.#day.holdsOn[resource] ?? []) {
      if (other === hold || this.#plan.stands[other.from] === 0 || this.#plan.stands[other.to] === 0) continue;
      const otherPlace = this.#plan.placeOf(other);
      if (otherPlace === OPEN || other.resources[otherPlace] !== resource || this.#plan.holdToS(other) <= fromS) continue;
      const readyS = toS + room.setupS(hold.states[place] as number, other.states[otherPlace] as number);
      if (this.#plan.holdFromS(other) >= readyS) continue;
      const lowS = readyS - other.fromOffsetS;
      if (this.#canBeRaised(other.from, lowS, isStrict)) this.#raise(other.from, lowS);
    }
    return this.#blockedBefore(block, startS)?.hold !== hold;
  }

  /** Where a lag's most is not kept, the block before comes later, unless that only breaks another. */
  #holdBackThoseBefore(block: number, startS: number): void {
    const { lags } = this.#day;
    for (const lag of lags.into[block] as Int32Array) {
      const from = lags.from[lag] as number;
      const mostS = lags.mostS[lag] as number;
      if (this.#plan.stands[from] === 0 || startS <= (this.#plan.startS[from] as number) + mostS) continue;
      if (this.#canBeRaised(from, startS - mostS, true)) this.#raise(from, startS - mostS);
    }
  }

  /** What stands already and comes too soon after the block is put down anew. */
  #pushThoseAfter(block: number, startS: number): void {
    const { lags } = this.#day;
    for (const lag of lags.outOf[block] as Int32Array) {
      const to = lags.to[lag] as number;
      const leastS = startS + (lags.minS[lag] as number);
      if (this.#plan.stands[to] === 1 && (this.#plan.startS[to] as number) < leastS && this.#day.fixedS[to] === NO_INSTANT_S)
        this.#raise(to, leastS);
    }
  }

  /** Whether a block could begin then for all that what stands fast before it says. */
  #canBeRaised(block: number, lowS: number, isStrict: boolean): boolean {
    if (this.#day.fixedS[block] !== NO_INSTANT_S) return false;
    if (!isStrict) return true;
    const { lags, fixedS } = this.#day;
    for (const lag of lags.into[block] as Int32Array) {
      const from = lags.from[lag] as number;
      const mostS = lags.mostS[lag] as number;
      if (mostS >= NO_MOST_S) continue;
      const beforeS = fixedS[from] as number;
      if (beforeS !== NO_INSTANT_S) {
        if (lowS > beforeS + mostS) return false;
      } else if (
        this.#plan.stands[from] === 1 &&
        lowS > (this.#plan.startS[from] as number) + mostS &&
        !this.#canBeRaised(from, lowS - mostS, true)
      ) {
        return false;
      }
    }
    return true;
  }
}
