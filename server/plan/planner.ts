import type { Logger } from 'pino';
import type { PlanProgress } from '../../shared/plan/plan-api.ts';
import type { Floor } from '../floor/floor.ts';
import type { Hint } from './jobs/moved-because.ts';
import type { PlannerAnswer, PlannerJob, SearchBudget, TroubleCost } from './jobs/planner-job.ts';
import { JobDropped, PlannerThread } from './planner-thread.ts';
import type { StartThread } from './start-thread.ts';

/** How hard the planner tries, in schedules: for a day that is asked for, for a re-plan while people wait, and afterwards. */
export interface PlannerBudgets {
  readonly propose: number;
  readonly replan: number;
  readonly improve: number;
}

/** What a house of forty batches has time for: see `npm run bench -- --only plan-live`. */
export const USUAL_BUDGETS: PlannerBudgets = { propose: 2_000, replan: 30, improve: 2_000 };

export interface PlannerOptions {
  readonly floor: Pick<Floor, 'state' | 'onCommitted'>;
  readonly log: Pick<Logger, 'error'>;
  readonly startThread: StartThread;
  readonly defer: (run: () => void) => void;
  readonly budgets: PlannerBudgets;
}

/** A job that somebody waits for and may give up. */
export interface Running {
  readonly answer: Promise<PlannerAnswer>;
  /** Gives it up; its answer rejects with JobDropped, unless it has come. */
  drop(): void;
}

interface Waiting {
  readonly job: PlannerJob;
  readonly isBackground: boolean;
  readonly progress: (progress: PlanProgress) => void;
  readonly resolve: (answer: PlannerAnswer) => void;
  readonly reject: (error: unknown) => void;
}

/**
 * The house's planner: one thread that keeps the plan true while people work, and one for all that takes long, one job
 * after another. What is sought in the background gives way to what somebody asks for.
 */
export class Planner {
  readonly budgets: PlannerBudgets;
  readonly #live: PlannerThread;
  readonly #search: PlannerThread;
  #waiting: Waiting[] = [];
  #current: Waiting | null = null;

  constructor({ floor, log, startThread, defer, budgets }: PlannerOptions) {
    this.budgets = budgets;
    this.#live = new PlannerThread({ floor, log, start: startThread, urgency: 'live', defer });
    this.#search = new PlannerThread({ floor, log, start: startThread, urgency: 'patient', defer });
  }

  /** The plan in force, made true again; `known` is what it was known to cost. Rejects with PlannerBroken, or JobDropped when the house ends. */
  async replan(nowMs: number, seed: number, hint: Hint, known: TroubleCost | null): Promise<PlannerAnswer> {
    const budget: SearchBudget = { schedules: this.budgets.replan, seed };
    return this.#live.run({ kind: 'replan', nowMs, budget, hint, known });
  }

  /** Begins what takes long, or queues it; `isBackground` where nobody waits for it. */
  search(job: PlannerJob, isBackground: boolean, progress: (progress: PlanProgress) => void = () => {}): Running {
    let waiting: Waiting | null = null;
    const answer = new Promise<PlannerAnswer>((resolve, reject) => {
      waiting = { job, isBackground, progress, resolve, reject };
      this.#waiting.push(waiting);
    });
    if (!isBackground && this.#current?.isBackground === true) void this.#search.drop();
    this.#next();
    return { answer, drop: () => this.#drop(waiting) };
  }

  async stop(): Promise<void> {
    await Promise.all([this.#live.stop(), this.#search.stop()]);
  }

  #next(): void {
    if (this.#current !== null) return;
    const index = Math.max(
      0,
      this.#waiting.findIndex(({ isBackground }) => !isBackground),
    );
    const [next] = this.#waiting.splice(index, 1);
    if (next === undefined) return;
    this.#current = next;
    void this.#run(next);
  }

  async #run(current: Waiting): Promise<void> {
    try {
      current.resolve(await this.#search.run(current.job, current.progress));
    } catch (error) {
      current.reject(error);
    }
    this.#current = null;
    this.#next();
  }

  #drop(dropped: Waiting | null): void {
    if (dropped === null) return;
    if (this.#current === dropped) {
      void this.#search.drop();
      return;
    }
    if (!this.#waiting.includes(dropped)) return;
    this.#waiting = this.#waiting.filter((waiting) => waiting !== dropped);
    dropped.reject(new JobDropped('the job was given up'));
  }
}
