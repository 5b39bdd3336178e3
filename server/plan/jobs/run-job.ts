import type { FloorState } from '../../../shared/floor/state.ts';
import type { PlanProgress } from '../../../shared/plan/plan-api.ts';
import { unreachable } from '../../../shared/result.ts';
import type { PlannerAnswer, PlannerJob } from './planner-job.ts';
import { playDay } from './play-day.ts';
import { propose } from './propose.ts';
import { improve, replan } from './replan.ts';

/** Told how far a job is, as often as it likes; what is said is only worked out where somebody is to hear it. */
export type Tell = (progress: () => PlanProgress) => void;

/** Does a job on a state. Pure, and the same again for the same state and job. Throws on bugs alone. */
export function runJob(state: FloorState, job: PlannerJob, tell: Tell): PlannerAnswer {
  switch (job.kind) {
    case 'propose':
      return propose(state, job, tell);
    case 'replan':
      return replan(state, job);
    case 'improve':
      return improve(state, job);
    case 'tryDay':
      return playDay(state, job, tell);
    default:
      return unreachable(job);
  }
}
