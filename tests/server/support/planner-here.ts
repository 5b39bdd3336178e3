import { PlannerDesk } from '../../../server/plan/planner-desk.ts';
import type { PlannerBudgets } from '../../../server/plan/planner.ts';
import type { StartThread } from '../../../server/plan/start-thread.ts';

/** As much search as a test has time for. */
export const TEST_BUDGETS: PlannerBudgets = { propose: 30, replan: 4, improve: 20 };

/**
 * A planner's thread without a thread: its messages come one a turn of the event loop, copied as between threads, and a job is
 * over in its turn. The real one runs built code; it is tried in plan-worker.test.ts.
 */
export const startHere: StartThread = (ears) => {
  let isStopped = false;
  const desk = new PlannerDesk(
    (message) => {
      const copied = structuredClone(message);
      if (!isStopped) ears.hear(copied);
    },
    () => 0,
  );
  return {
    say: (message) => {
      const copied = structuredClone(message);
      setImmediate(() => {
        if (!isStopped) desk.take(copied);
      });
    },
    stop: async () => {
      isStopped = true;
    },
  };
};
