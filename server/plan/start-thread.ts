import { Worker } from 'node:worker_threads';
import type { FromPlanner, ToPlanner } from './planner-messages.ts';

/** A planner's thread that runs, seen from the floor's. */
export interface ThreadPort {
  say(message: ToPlanner): void;
  /** Ends it at once, whatever it is at. */
  stop(): Promise<void>;
}

/** What a thread is given to be heard by. `died` is called once, when it has ended and nobody stopped it. */
export interface ThreadEars {
  hear(message: FromPlanner): void;
  died(error: Error): void;
}

/** Whether somebody waits for what a thread works at, as people do for a re-plan, or it is to hold up nobody. */
export type Urgency = 'live' | 'patient';

export type StartThread = (ears: ThreadEars, urgency: Urgency) => ThreadPort;

/** The file beside this one, as it is built: Node runs no TypeScript. */
const WORKER = new URL('planner-worker.js', import.meta.url);

/** A worker thread of Node's. */
export const startWorkerThread: StartThread = (ears, urgency) => {
  // Nothing of how this process was started is for it: a program given on the command line would be run again.
  const worker = new Worker(WORKER, { execArgv: [], workerData: urgency });
  let isOver = false;
  const over = (error: Error): void => {
    if (isOver) return;
    isOver = true;
    ears.died(error);
  };
  worker.on('message', (message: FromPlanner) => ears.hear(message));
  worker.on('messageerror', over);
  worker.on('error', over);
  worker.on('exit', (code) => over(new Error(`the planner's thread ended with exit code ${code}`)));
  // It holds nothing of the house's: whoever ends the server does not wait for it.
  worker.unref();
  return {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
    say: (message) => worker.postMessage(message),
    stop: async () => {
      isOver = true;
      await worker.terminate();
    },
  };
};
