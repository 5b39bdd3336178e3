import type { CompiledDay, CompiledGoal } from './compiled-day.ts';
import { NO_TARGET_S } from './compiled-lags.ts';
import { OPEN, type DayPlan } from './day-plan.ts';
import type { Room } from './room.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

const MINUTE_S = 60;
/** What it costs to have more somewhere than there is room for: more than anything else. */
const FORCED_PRICE = 1e7;

/** What a plan costs, kept up to date block by block: what is not put down yet costs nothing yet. */
export class DayCosts {
  readonly #plan: DayPlan;
  readonly #day: CompiledDay;
  /** Each in its own list: by lag, goal, block, choice, resource. */
  readonly #lag: Float64Array;
  readonly #goal: Float64Array;
  readonly #block: Float64Array;
  readonly #choice: Float64Array;
  readonly #room: Float64Array;
  readonly #pricedRooms: readonly Int32Array[];
  readonly #seen: Int32Array;
  readonly #roomSeen: Int32Array;
  #look = 0;
  #total = 0;

  constructor(plan: DayPlan) {
    const { day } = plan;
    this.#plan = plan;
    this.#day = day;
    this.#lag = new Float64Array(day.lags.count);
    this.#goal = new Float64Array(day.goals.length);
    this.#block = new Float64Array(day.count);
    this.#choice = new Float64Array(day.problem.choices.length);
    this.#room = new Float64Array(plan.rooms.length);
    this.#pricedRooms = pricedRooms(plan);
    this.#seen = new Int32Array(day.count);
    this.#roomSeen = new Int32Array(plan.rooms.length);
  }

  get total(): number {
    return this.#total;
  }

  /** What everything that hangs on a block costs now: its lags, its goals, its wishes. */
  ofBlock(block: number): number {
    const { lags, goalsOf } = this.#day;
    let sum = this.#block[block] as number;
    for (const lag of lags.outOf[block] as Int32Array) sum += this.#lag[lag] as number;
    for (const lag of lags.into[block] as Int32Array) sum += this.#lag[lag] as number;
    for (const goal of goalsOf[block] as Int32Array) sum += this.#goal[goal] as number;
    return sum;
  }

  /** Takes what was put or taken since a mark into account. */
  refreshSince(mark: number): void {
    this.#look += 1;
    this.#plan.touchedSince(mark, (block) => {
      if (this.#seen[block] === this.#look) return;
      this.#seen[block] = this.#look;
      this.#refresh(block);
    });
  }

  /** Undoes the plan to a mark, and what was taken into account with it. */
  undoTo(mark: number): void {
    const touched: number[] = [];
    this.#look += 1;
    this.#plan.touchedSince(mark, (block) => {
      if (this.#seen[block] === this.#look) return;
      this.#seen[block] = this.#look;
      touched.push(block);
    });
    this.#plan.undoTo(mark);
    for (const block of touched) this.#refresh(block);
  }

  #refresh(block: number): void {
    const { lags, goalsOf, choicesOf } = this.#day;
    for (const lag of lags.outOf[block] as Int32Array) this.#set(this.#lag, lag, this.#lagPrice(lag));
    for (const lag of lags.into[block] as Int32Array) this.#set(this.#lag, lag, this.#lagPrice(lag));
    for (const goal of goalsOf[block] as Int32Array) this.#set(this.#goal, goal, this.#goalPrice(this.#day.goals[goal] as CompiledGoal));
    for (const choice of choicesOf[block] as Int32Array) this.#set(this.#choice, choice, this.#choicePrice(choice));
    this.#set(this.#block, block, this.#blockPrice(block));
    for (const room of this.#pricedRooms[block] as Int32Array) {
      if (this.#roomSeen[room] === this.#look) continue;
      this.#roomSeen[room] = this.#look;
      this.#set(this.#room, room, (this.#plan.rooms[room] as Room).calmPrice());
    }
  }

  #set(list: Float64Array, index: number, price: number): void {
    this.#total += price - (list[index] as number);
    list[index] = price;
  }

  #lagPrice(lag: number): number {
    const { lags } = this.#day;
    const { stands, startS } = this.#plan;
    const from = lags.from[lag] as number;
    const to = lags.to[lag] as number;
    if (stands[from] === 0 || stands[to] === 0) return 0;
    return priceOfGap(this.#day, lag, (startS[to] as number) - (startS[from] as number));
  }

  #goalPrice(goal: CompiledGoal): number {
    return (
      (this.#plan.stands[goal.block] === 1 ? priceOfServing(goal, this.#plan.startS[goal.block] as number) : 0) +
      (goal.freshBlock >= 0 && this.#plan.stands[goal.freshBlock] === 1
        ? priceOfAge(goal, this.#plan.startS[goal.freshBlock] as number)
        : 0)
    );
  }

  #choicePrice(choice: number): number {
    const option = this.#plan.option[choice] as number;
    return option === OPEN ? 0 : (this.#day.problem.choices[choice]?.options[option]?.price ?? 0);
  }

  #blockPrice(block: number): number {
    if (this.#plan.stands[block] === 0) return 0;
    return priceOfWishes(this.#day, block, this.#plan.startS[block] as number) + (this.#plan.isForced[block] === 1 ? FORCED_PRICE : 0);
  }
}

/** What a lag costs with so many seconds from start to start of its blocks. */
export function priceOfGap({ lags }: CompiledDay, lag: number, gapS: number): number {
  const targetS = lags.targetS[lag] as number;
  const pastS = gapS - (lags.mostS[lag] as number);
  const away = targetS === NO_TARGET_S ? 0 : (Math.abs(gapS - targetS) / MINUTE_S) * (lags.awayPrice[lag] as number);
  return pastS > 0 ? away + (pastS / MINUTE_S) * (lags.spoilPrice[lag] as number) : away;
}

/** What serving a goal costs with its block at an instant. */
export function priceOfServing(goal: CompiledGoal, startS: number): number {
  return startS > goal.dueS ? (startS - goal.dueS) * goal.latePriceS : (goal.dueS - startS) * goal.earlyPriceS;
}

/** What it costs that what a goal wants fresh was made by a block at an instant. */
export function priceOfAge(goal: CompiledGoal, startS: number): number {
  return startS < goal.notBeforeS ? (goal.notBeforeS - startS) * goal.oldPriceS : 0;
}

/** What it costs that a block is not where it is pinned, or was. */
export function priceOfWishes({ wishesOf }: CompiledDay, block: number, startS: number): number {
  let sum = 0;
  for (const { atS, priceS } of wishesOf[block] ?? []) sum += Math.abs(startS - atS) * priceS;
  return sum;
}

/** By block: the resources whose calm may change with it. */
function pricedRooms({ day, rooms }: DayPlan): readonly Int32Array[] {
  return day.holdsOf.map((holds) => {
    const priced = new Set<number>();
    for (const { resources } of holds) for (const resource of resources) if (rooms[resource]?.isPriced === true) priced.add(resource);
    return Int32Array.from(priced);
  });
}
