import { Random } from '../core/random.ts';
import { BatchInserter, JUST_IN_TIME } from './batch-inserter.ts';
import { NO_INSTANT_S, type CompiledDay } from './compiled-day.ts';
import { DayCosts } from './day-costs.ts';
import { DayPlan, OPEN } from './day-plan.ts';
import { Nudger } from './nudger.ts';
import { Settler } from './settler.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** A whole plan, by block and by choice. */
export interface PlanCopy {
  readonly startS: Int32Array;
  readonly option: Int32Array;
  readonly total: number;
}

/** A plan and all that works on it. */
export class DaySearch {
  readonly day: CompiledDay;
  readonly random: Random;
  readonly plan: DayPlan;
  readonly costs: DayCosts;
  readonly settler: Settler;
  readonly inserter: BatchInserter;
  readonly nudger: Nudger;
  /** An order for the settler, to be filled by a move. */
  readonly keys: Int32Array;
  /** Batches with something in them that does not stand yet. */
  readonly openBatches: readonly number[];

  /** With only that in the plan which stands already. */
  constructor(day: CompiledDay, seed: number) {
    this.day = day;
    this.random = new Random(seed);
    this.keys = day.rank.slice();
    this.plan = new DayPlan(day);
    this.costs = new DayCosts(this.plan);
    this.settler = new Settler(this.plan, this.random);
    this.nudger = new Nudger(this.plan);
    this.inserter = new BatchInserter(this.plan, this.costs, this.settler, this.nudger);
    this.openBatches = [...day.blocksOfBatch.keys()].filter((batch) =>
      (day.blocksOfBatch[batch] ?? new Int32Array()).some((block) => day.fixedS[block] === NO_INSTANT_S),
    );
    this.#putWhatStands();
  }

  /** Takes everything out and puts the batches in, one after the other. */
  construct(order: readonly number[], whimS: number, earlierTries: number): void {
    for (const batch of this.openBatches) this.inserter.takeOut(batch);
    this.costs.refreshSince(0);
    for (const batch of order) {
      const mark = this.plan.mark;
      if (!this.inserter.insert(batch, { ...JUST_IN_TIME, whimS }, earlierTries, true)) {
        this.plan.undoTo(mark);
        this.#putAnyhow(batch);
      }
      this.plan.keep();
    }
  }

  /** Keeps a copy of the plan as it is. */
  copy(): PlanCopy {
    return { startS: this.plan.startS.slice(), option: this.plan.option.slice(), total: this.costs.total };
  }

  /** Makes the plan what a copy says. */
  load({ startS, option }: Pick<PlanCopy, 'startS' | 'option'>): void {
    const { day, plan } = this;
    const moved: number[] = [];
    for (let block = 0; block < day.count; block += 1) {
      const isSame = plan.stands[block] === 1 && plan.startS[block] === startS[block] && this.#hasOptions(block, option);
      if (day.fixedS[block] !== NO_INSTANT_S || isSame) continue;
      moved.push(block);
      if (plan.stands[block] === 1) plan.takeUp(block);
    }
    for (const block of moved)
      for (const choice of day.choicesOf[block] as Int32Array) this.#chooseIfOpen(choice, option[choice] as number);
    for (const block of moved) plan.put(block, startS[block] as number);
    this.costs.refreshSince(0);
    plan.keep();
  }

  #hasOptions(block: number, option: Int32Array): boolean {
    return (this.day.choicesOf[block] as Int32Array).every((choice) => this.plan.option[choice] === option[choice]);
  }

  #chooseIfOpen(choice: number, option: number): void {
    const isHeld = (this.day.blocksOfChoice[choice] as Int32Array).some((block) => this.plan.stands[block] === 1);
    if (!isHeld) this.plan.choose(choice, option);
  }

  /** What stands fast is put down where it is, whether there is room or not: it is so. */
  #putWhatStands(): void {
    const { day, plan } = this;
    for (let block = 0; block < day.count; block += 1) {
      const fixedS = day.fixedS[block] as number;
      if (fixedS === NO_INSTANT_S) continue;
      for (const choice of day.choicesOf[block] as Int32Array) {
        if (plan.option[choice] === OPEN) plan.choose(choice, standingOption(day, choice));
      }
      plan.put(block, fixedS);
    }
    this.costs.refreshSince(0);
    plan.keep();
  }

  /** A batch for which no way was found stands one block behind the other, whether there is room or not. */
  #putAnyhow(batch: number): void {
    const { day, plan } = this;
    const blocks = [...(day.blocksOfBatch[batch] as Int32Array)].filter((block) => plan.stands[block] === 0);
    for (const block of blocks.sort((one, other) => (day.rank[one] as number) - (day.rank[other] as number))) {
      let startS = day.releaseS[block] as number;
      for (const lag of day.lags.into[block] as Int32Array) {
        const from = day.lags.from[lag] as number;
        if (plan.stands[from] === 1) startS = Math.max(startS, (plan.startS[from] as number) + (day.lags.minS[lag] as number));
      }
      for (const choice of day.choicesOf[block] as Int32Array) {
        if (plan.option[choice] === OPEN) plan.choose(choice, standingOption(day, choice));
      }
      plan.put(block, startS);
      plan.force(block, true);
    }
    this.costs.refreshSince(0);
  }
}

/** The option of what stands already: the one that is fixed, or that the plan had, or the first with room. */
function standingOption(day: CompiledDay, choice: number): number {
  const facts = day.problem.choices[choice];
  return facts?.fixedOption ?? facts?.previousOption ?? day.optionsOf[choice]?.[0] ?? 0;
}
