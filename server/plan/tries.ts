import { MOST_PROPOSALS, type PlanFault, type ProposalDone, type Try, type TryAsk } from '../../shared/plan/plan-api.ts';
import type { TryResult } from '../../shared/plan/try/try-result.ts';
import { unreachable } from '../../shared/result.ts';
import { faultsOfJob } from './job-faults.ts';
import type { Planner, Running } from './planner.ts';

export interface TriesOptions {
  readonly planner: Planner;
  readonly clock: { nowMs(): number };
  readonly newId: () => string;
}

/** Days that are played, while they are and after: the last few. */
export class Tries {
  readonly #options: TriesOptions;
  readonly #kept = new Map<string, { played: Try; readonly running: Running }>();

  constructor(options: TriesOptions) {
    this.#options = options;
  }

  /** Begins to play a day that was proposed, or the plan in force (null). */
  ask(ask: TryAsk, proposal: ProposalDone | null): Try {
    const { planner, clock, newId } = this.#options;
    const askedMs = clock.nowMs();
    const id = newId();
    const proposed = proposal === null ? null : { commandId: newId(), day: proposal };
    const job = { kind: 'tryDay', nowMs: askedMs, runs: ask.runs, seed: ask.seed, proposed } as const;
    const running = planner.search(job, false, ({ schedulesDone }) => this.#progress(id, schedulesDone));
    const played: Try = { id, ask, askedMs, status: 'running', runsDone: 0 };
    this.#kept.set(id, { played, running });
    void this.#follow(id, running);
    for (const [oldest, { running: old }] of this.#kept) {
      if (this.#kept.size <= MOST_PROPOSALS) break;
      this.#kept.delete(oldest);
      old.drop();
    }
    return played;
  }

  /** One of them as it is now, or null where it is not known (any more). */
  find(id: string): Try | null {
    return this.#kept.get(id)?.played ?? null;
  }

  #progress(id: string, runsDone: number): void {
    const kept = this.#kept.get(id);
    if (kept?.played.status === 'running') kept.played = { ...kept.played, runsDone };
  }

  async #follow(id: string, running: Running): Promise<void> {
    const outcome = await outcomeOf(running);
    const kept = this.#kept.get(id);
    if (kept?.played.status !== 'running') return;
    const { runsDone: _over, status: _running, ...head } = kept.played;
    kept.played =
      'faults' in outcome
        ? { ...head, status: 'failed', faults: [...outcome.faults] }
        : { ...head, status: 'done', doneMs: this.#options.clock.nowMs(), result: outcome.result };
  }
}

async function outcomeOf(running: Running): Promise<{ readonly result: TryResult } | { readonly faults: readonly PlanFault[] }> {
  try {
    const answer = await running.answer;
    switch (answer.kind) {
      case 'tried':
        return answer;
      case 'impossible':
        return answer;
      case 'nothingPlanned':
        return { faults: [{ code: 'nothingPlanned', message: 'there is no plan that could be played' }] };
      case 'proposed':
      case 'replanned':
      case 'improved':
        throw new Error(`a day was to be played, and ${answer.kind} is no answer to that`);
      default:
        return unreachable(answer);
    }
  } catch (error) {
    const faults = faultsOfJob(error);
    if (faults !== null) return { faults };
    throw error;
  }
}
