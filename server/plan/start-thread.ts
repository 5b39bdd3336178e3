import { startThread, type ThreadEars } from '../threads/start-thread.ts';
import type { FromPlanner, ToPlanner } from './planner-messages.ts';

/** A planner's thread that runs, seen from the floor's. */
export interface ThreadPort {
  say(message: ToPlanner): void;
  /** Ends it at once, whatever it is at. */
  stop(): Promise<void>;
}

/** What a thread is given to be heard by. */
export type PlannerEars = ThreadEars<FromPlanner>;

/** Whether somebody waits for what a thread works at, as people do for a re-plan, or it is to hold up nobody. */
export type Urgency = 'live' | 'patient';

export type StartThread = (ears: PlannerEars, urgency: Urgency) => ThreadPort;

/** The file beside this one, as it is built: Node runs no TypeScript. */
const WORKER = new URL('planner-worker.js', import.meta.url);

/** A worker thread of Node's. It holds nothing of the house's. */
export const startWorkerThread: StartThread = (ears, urgency) => {
  const { say, terminate } = startThread<ToPlanner, FromPlanner>(WORKER, urgency, ears, "the planner's thread");
  return { say, stop: terminate };
};
