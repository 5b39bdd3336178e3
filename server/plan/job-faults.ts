import type { PlanFault } from '../../shared/plan/plan-api.ts';
import { JobDropped, PlannerBroken } from './planner-thread.ts';

/** What whoever asked is told of a job that came to nothing; null where the error is not of a job. */
export function faultsOfJob(error: unknown): readonly PlanFault[] | null {
  if (error instanceof JobDropped) return [{ code: 'givenUp', message: 'it was given up before it was done' }];
  if (error instanceof PlannerBroken) return [{ code: 'crashed', message: 'the planner failed; what it said is in the server’s log' }];
  return null;
}
