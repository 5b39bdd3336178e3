import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { PlannerAnswer, PlannerJob } from './jobs/planner-job.ts';
import type { PlanProgress } from '../../shared/plan/plan-api.ts';
import type { StatePart } from './state-parts.ts';

/** What a planner's thread is told. Its state first, in parts; then what happens, in order, with jobs in between. */
export type ToPlanner =
  | { readonly type: 'part'; readonly part: StatePart }
  | { readonly type: 'events'; readonly events: readonly RecordedEvent[] }
  | { readonly type: 'job'; readonly jobId: number; readonly job: PlannerJob };

/** What it says. */
export type FromPlanner =
  | { readonly type: 'progress'; readonly jobId: number; readonly progress: PlanProgress }
  | { readonly type: 'answer'; readonly jobId: number; readonly answer: PlannerAnswer }
  /** The job threw: a bug of ours, with what it said. */
  | { readonly type: 'broken'; readonly jobId: number; readonly message: string; readonly stack: string };
