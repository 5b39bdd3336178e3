import { MOST_PROPOSALS, type PlanFault, type PlanProgress, type Proposal, type ProposalAsk } from '../../shared/plan/plan-api.ts';
import { unreachable } from '../../shared/result.ts';
import type { Floor } from '../floor/floor.ts';
import { outdatesProposal } from './disturbs.ts';
import type { PlannerAnswer } from './jobs/planner-job.ts';
import { faultsOfJob } from './job-faults.ts';
import type { Planner, Running } from './planner.ts';

interface Kept {
  readonly running: Running;
  proposal: Proposal;
  isOutdated: boolean;
}

export interface ProposalsOptions {
  readonly planner: Planner;
  readonly floor: Pick<Floor, 'onCommitted'>;
  readonly clock: { nowMs(): number };
  readonly newId: () => string;
  /** One more is sought, one is found, or one is gone. */
  readonly onNews: () => void;
}

/** The days that were asked for, while they are sought and after: the last few, so that they can be compared. */
export class Proposals {
  readonly #options: ProposalsOptions;
  readonly #kept = new Map<string, Kept>();
  readonly #stop: () => void;

  constructor(options: ProposalsOptions) {
    this.#options = options;
    this.#stop = options.floor.onCommitted(({ events }) => {
      for (const kept of this.#kept.values())
        kept.isOutdated ||= events.some(({ event }) => outdatesProposal(event, kept.proposal.serviceDate));
    });
  }

  /** Begins to seek a day. The oldest of too many is given up. */
  ask(ask: ProposalAsk): Proposal {
    const { planner, clock, newId } = this.#options;
    const budget = { schedules: ask.schedules ?? planner.budgets.propose, seed: ask.seed };
    const askedMs = clock.nowMs();
    const id = newId();
    const head = { id, serviceDate: ask.serviceDate, ask, askedMs };
    const running = planner.search({ kind: 'propose', nowMs: askedMs, ask, budget }, false, (progress) => this.#progress(id, progress));
    const proposal: Proposal = { ...head, status: 'running', progress: { schedulesDone: 0, schedules: budget.schedules, best: null } };
    this.#kept.set(id, { running, proposal, isOutdated: false });
    void this.#follow(id, running);
    for (const [oldest] of this.#kept) {
      if (this.#kept.size <= MOST_PROPOSALS) break;
      this.forget(oldest);
    }
    this.#options.onNews();
    return proposal;
  }

  /** One of them as it is now, or null where it is not known (any more). */
  find(id: string): Proposal | null {
    const kept = this.#kept.get(id);
    return kept === undefined ? null : current(kept);
  }

  /** All of them, the oldest first. */
  all(): readonly Proposal[] {
    return [...this.#kept.values()].map(current);
  }

  /** Gives it up where it is still sought, and forgets it; false where it was not known. */
  forget(id: string): boolean {
    const kept = this.#kept.get(id);
    this.#kept.delete(id);
    kept?.running.drop();
    if (kept !== undefined) this.#options.onNews();
    return kept !== undefined;
  }

  stop(): void {
    this.#stop();
  }

  #progress(id: string, progress: PlanProgress): void {
    const kept = this.#kept.get(id);
    if (kept?.proposal.status === 'running') kept.proposal = { ...kept.proposal, progress };
  }

  async #follow(id: string, running: Running): Promise<void> {
    const outcome = await outcomeOf(running);
    const kept = this.#kept.get(id);
    if (kept === undefined || kept.proposal.status !== 'running') return;
    const { progress: _over, status: _running, ...head } = kept.proposal;
    if ('faults' in outcome) {
      kept.proposal = { ...head, status: 'failed', faults: [...outcome.faults] };
      this.#options.onNews();
      return;
    }
    kept.proposal = { ...head, ...outcome.day, status: 'done', doneMs: this.#options.clock.nowMs(), isOutdated: kept.isOutdated };
    this.#options.onNews();
  }
}

function current({ proposal, isOutdated }: Kept): Proposal {
  return proposal.status === 'done' && proposal.isOutdated !== isOutdated ? { ...proposal, isOutdated } : proposal;
}

type Sought = Extract<PlannerAnswer, { kind: 'proposed' }> | { readonly faults: readonly PlanFault[] };

async function outcomeOf(running: Running): Promise<Sought> {
  try {
    const answer = await running.answer;
    switch (answer.kind) {
      case 'proposed':
        return answer;
      case 'impossible':
        return { faults: answer.faults };
      case 'replanned':
      case 'improved':
      case 'tried':
      case 'nothingPlanned':
        throw new Error(`a day was asked for, and ${answer.kind} is no answer to that`);
      default:
        return unreachable(answer);
    }
  } catch (error) {
    const faults = faultsOfJob(error);
    if (faults !== null) return { faults };
    throw error;
  }
}
