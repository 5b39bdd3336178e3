import { NO_INSTANT_S, type CompiledDay } from './compiled-day.ts';
import type { DayCosts } from './day-costs.ts';
import { OPEN, type DayPlan } from './day-plan.ts';
import type { Nudger } from './nudger.ts';
import type { Manner, Settler } from './settler.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Just in time, rests as long as wanted. */
export const JUST_IN_TIME: Manner = { aheadS: 0, isTight: false, isHeldBack: false, whimS: 0, otherOptionS: 0 };
/** Added to what it was late: what is in the way of the later steps is seldom as long as what is in the way of the first. */
const MARGIN_S = 60;

/** What a trial made of the blocks that it touched. */
interface Trial {
  readonly total: number;
  readonly blocks: readonly number[];
  readonly startsS: readonly number[];
  readonly options: readonly (readonly [number, number])[];
  readonly forced: readonly boolean[];
}

/** Puts whole batches into a plan, held back as late as what waits for them allows, and as much earlier as the rest of the day asks for. */
export class BatchInserter {
  readonly #plan: DayPlan;
  readonly #day: CompiledDay;
  readonly #costs: DayCosts;
  readonly #settler: Settler;
  readonly #nudger: Nudger;
  /** By batch: its blocks, those that wait for others first. */
  readonly #backwards: readonly Int32Array[];

  constructor(plan: DayPlan, costs: DayCosts, settler: Settler, nudger: Nudger) {
    this.#plan = plan;
    this.#day = plan.day;
    this.#costs = costs;
    this.#settler = settler;
    this.#nudger = nudger;
    const { rank, blocksOfBatch } = plan.day;
    this.#backwards = blocksOfBatch.map((blocks) => blocks.toSorted((one, other) => (rank[other] as number) - (rank[one] as number)));
  }

  /** Takes a batch out of the plan but for what stands fast; opens its choices. */
  takeOut(batch: number): void {
    const blocks = this.#day.blocksOfBatch[batch] as Int32Array;
    for (const block of blocks) if (this.#isFree(block) && this.#plan.stands[block] === 1) this.#plan.takeUp(block);
    for (const block of blocks) for (const choice of this.#day.choicesOf[block] as Int32Array) this.#openChoice(choice);
  }

  /**
   * Puts a batch in that is not in the plan: in the manner given, and where it is late then, so much earlier as often as `earlierTries` says,
   * and as soon as it can be if `triesSoonest`. False where it found no way.
   */
  insert(batch: number, manner: Manner, earlierTries: number, triesSoonest: boolean): boolean {
    const mark = this.#plan.mark;
    let best: Trial | null = null;
    let aheadS = manner.aheadS ?? 0;
    const tries = 1 + earlierTries + (triesSoonest ? 1 : 0);
    for (let attempt = 0; attempt < tries; attempt += 1) {
      const isSoonest = attempt > earlierTries;
      const isMade = this.#try(batch, isSoonest ? { ...manner, aheadS: Infinity, isTight: true } : { ...manner, aheadS });
      const lateS = this.#lateS(batch);
      const isInTime = isMade && lateS === 0;
      if (isInTime && best === null) return true;
      if (isMade && (best === null || this.#costs.total < best.total)) {
        // The last needs no copy: it stands.
        if (attempt === tries - 1) return true;
        best = this.#trialSince(mark);
      }
      this.#costs.undoTo(mark);
      if (isInTime) break;
      aheadS += lateS + MARGIN_S;
    }
    if (best === null) return false;
    this.#redo(best);
    this.#costs.refreshSince(mark);
    return true;
  }

  #isFree(block: number): boolean {
    return this.#day.fixedS[block] === NO_INSTANT_S;
  }

  /** Opens a choice, unless something stands that it was made for. */
  #openChoice(choice: number): void {
    const isHeld = (this.#day.blocksOfChoice[choice] as Int32Array).some((block) => this.#plan.stands[block] === 1);
    if (!isHeld) this.#plan.choose(choice, OPEN);
  }

  #try(batch: number, manner: Manner): boolean {
    const mark = this.#plan.mark;
    this.#settler.begin(this.#day.rank);
    for (const block of this.#day.blocksOfBatch[batch] as Int32Array) if (this.#plan.stands[block] === 0) this.#settler.lift(block);
    const isSettled = this.#settler.settle(manner);
    this.#costs.refreshSince(mark);
    if (isSettled && manner.isHeldBack) this.holdBack(batch);
    return isSettled;
  }

  /** Moves the blocks of a batch later, the last first, as far as what waits for each would have it; not where that costs more. */
  holdBack(batch: number): void {
    const mark = this.#plan.mark;
    const before = this.#costs.total;
    const blocks = this.#backwards[batch] as Int32Array;
    for (const block of blocks) this.#nudger.holdBack(block);
    if (this.#plan.mark === mark) return;
    this.#costs.refreshSince(mark);
    if (this.#costs.total > before) this.#costs.undoTo(mark);
  }

  /** How late the latest of what the batch serves is; what waits for it in other batches counts too. */
  #lateS(batch: number): number {
    let lateS = 0;
    for (const block of this.#day.blocksOfBatch[batch] as Int32Array) {
      for (const goal of this.#day.goalsOf[block] as Int32Array) {
        const facts = this.#day.goals[goal];
        if (facts?.block === block) lateS = Math.max(lateS, (this.#plan.startS[block] as number) - facts.dueS);
      }
    }
    return lateS;
  }

  #trialSince(mark: number): Trial {
    const blocks = new Set<number>();
    this.#plan.touchedSince(mark, (block) => blocks.add(block));
    const list = [...blocks];
    const choices = new Set(list.flatMap((block) => [...(this.#day.choicesOf[block] ?? [])]));
    return {
      total: this.#costs.total,
      blocks: list,
      startsS: list.map((block) => this.#plan.startS[block] as number),
      options: Array.from(choices, (choice) => [choice, this.#plan.option[choice] as number] as const),
      forced: list.map((block) => this.#plan.isForced[block] === 1),
    };
  }

  #redo({ blocks, startsS, options, forced }: Trial): void {
    for (const block of blocks) if (this.#plan.stands[block] === 1) this.#plan.takeUp(block);
    for (const [choice, option] of options) this.#plan.choose(choice, option);
    for (const [index, block] of blocks.entries()) {
      this.#plan.put(block, startsS[index] as number);
      this.#plan.force(block, forced[index] ?? false);
    }
  }
}
