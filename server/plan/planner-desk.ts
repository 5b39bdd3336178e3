import { evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { unreachable } from '../../shared/result.ts';
import { runJob } from './jobs/run-job.ts';
import type { FromPlanner, ToPlanner } from './planner-messages.ts';
import { withPart } from './state-parts.ts';

/** How often a job says how far it is, in milliseconds. */
const PROGRESS_MS = 100;

/** The planner's end of its thread: keeps the state that the floor has, and works off one job after another. */
export class PlannerDesk {
  readonly #say: (message: FromPlanner) => void;
  readonly #monotonicMs: () => number;
  #state: FloorState = EMPTY_STATE;

  constructor(say: (message: FromPlanner) => void, monotonicMs: () => number) {
    this.#say = say;
    this.#monotonicMs = monotonicMs;
  }

  /** Takes one message; a job is over when this returns. */
  take(message: ToPlanner): void {
    switch (message.type) {
      case 'part':
        this.#state = withPart(this.#state, message.part);
        return;
      case 'events':
        // What was recorded as the state was on its way is in it already.
        this.#state = evolveAll(
          this.#state,
          message.events.filter(({ sequence }) => sequence > this.#state.sequence),
        );
        return;
      case 'job':
        this.#work(message);
        return;
      default:
        unreachable(message);
    }
  }

  #work({ jobId, job }: Extract<ToPlanner, { type: 'job' }>): void {
    let saidMs = this.#monotonicMs();
    try {
      const answer = runJob(this.#state, job, (progress) => {
        const nowMs = this.#monotonicMs();
        if (nowMs - saidMs < PROGRESS_MS) return;
        saidMs = nowMs;
        this.#say({ type: 'progress', jobId, progress: progress() });
      });
      this.#say({ type: 'answer', jobId, answer });
    } catch (error) {
      // Whoever asked is told, and says so in the log: the thread goes on with what it knows.
      const { message, stack = '' } = error instanceof Error ? error : new Error(String(error));
      this.#say({ type: 'broken', jobId, message, stack });
    }
  }
}
