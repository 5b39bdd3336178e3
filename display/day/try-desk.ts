import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { ASK_AGAIN_MS, MOST_RUNS, trySchema, type PlanFault, type Try, type TryAsk } from '../../shared/plan/plan-api.ts';
import type { NotDone, PlanTools } from './plan-desk.ts';

const USUAL_RUNS = Math.min(1_000, MOST_RUNS);

/** What the page has of playing a day many times: the last try, of the plan in force or of a proposal. */
export class TryDesk implements ReactiveController {
  last: Try | null = null;
  notDone: NotDone | null = null;
  readonly #host: ReactiveControllerHost;
  readonly #tools: () => PlanTools;
  #isGone = false;

  constructor(host: ReactiveControllerHost, tools: () => PlanTools) {
    this.#host = host;
    this.#tools = tools;
    host.addController(this);
  }

  hostConnected(): void {
    this.#isGone = false;
  }

  hostDisconnected(): void {
    this.#isGone = true;
  }

  /** Runs done of all, while it is played; null else. */
  get progress(): { readonly done: number; readonly of: number } | null {
    return this.last?.status === 'running' ? { done: this.last.runsDone, of: this.last.ask.runs } : null;
  }

  /** Why the last try came to nothing; null where it did not. */
  get fault(): PlanFault | null {
    return this.last?.status === 'failed' ? (this.last.faults[0] ?? null) : null;
  }

  /** Plays a proposal, or the plan in force where none is named, and asks until it is played. */
  async start(proposalId: string | null): Promise<void> {
    if (this.progress !== null) return;
    const { store, wait } = this.#tools();
    const ask: TryAsk = { ...(proposalId === null ? {} : { proposalId }), runs: USUAL_RUNS, seed: 1 };
    let asked = await store.startTry(ask, trySchema);
    while (!this.#isGone) {
      this.notDone = asked.phase === 'here' ? null : asked;
      if (asked.phase === 'here') this.last = asked.value;
      this.#host.requestUpdate();
      if (asked.phase !== 'here' || asked.value.status !== 'running') return;
      await wait(ASK_AGAIN_MS);
      asked = await store.tryOf(asked.value.id, trySchema);
    }
  }

  /** Another day is looked at: what was played was about the other one. */
  forget(): void {
    this.last = null;
    this.notDone = null;
  }
}
