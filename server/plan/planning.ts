import type { Logger } from 'pino';
import type { HouseClock } from '../clock/house-clock.ts';
import type { Timers } from '../floor/alarm-clock.ts';
import type { Floor } from '../floor/floor.ts';
import { Planner, USUAL_BUDGETS, type PlannerBudgets } from './planner.ts';
import { Proposals } from './proposals.ts';
import { Replanner } from './replanner.ts';
import { startWorkerThread, type StartThread } from './start-thread.ts';
import { Tries } from './tries.ts';

export interface PlanningOptions {
  readonly floor: Floor;
  readonly clock: HouseClock;
  readonly timers: Timers;
  readonly newId: () => string;
  readonly log: Pick<Logger, 'error'>;
  /** What is found, offered or gone and stands in no event; pages that show plans ask anew. */
  readonly onNews: () => void;
  /** How its threads are started, and how hard they try, where tests bring their own. */
  readonly startThread?: StartThread;
  readonly budgets?: PlannerBudgets;
}

/** Everything about plans in a house: days that are sought, the one in force, days that are played. */
export class Planning {
  readonly planner: Planner;
  readonly proposals: Proposals;
  readonly tries: Tries;
  readonly replanner: Replanner;

  constructor({ floor, clock, timers, newId, log, onNews, startThread = startWorkerThread, budgets = USUAL_BUDGETS }: PlanningOptions) {
    // Its threads hear of what is recorded before anybody asks them about it.
    this.planner = new Planner({ floor, log, startThread, defer: (run) => setImmediate(run), budgets });
    this.proposals = new Proposals({ planner: this.planner, floor, clock, newId, onNews });
    this.tries = new Tries({ planner: this.planner, clock, newId });
    this.replanner = new Replanner({ floor, planner: this.planner, clock, timers, newId, log, onNews });
  }

  async stop(): Promise<void> {
    this.replanner.stop();
    this.proposals.stop();
    await this.planner.stop();
  }
}
