import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { ASK_AGAIN_MS, type PlanStatus, type Proposal, type ProposalDone } from '../../shared/plan/plan-api.ts';
import type { PlannedCleaning } from '../../shared/plan/planned-cleaning.ts';
import { PLANNING } from '../words/day.ts';
import type { Asked, PlanStore } from './plan-store.ts';
import { askWith, triedIn, withTried, type TriedChange } from './tried-change.ts';

/** What the desk works with: the planner over HTTP, and somebody who waits. */
export interface PlanTools {
  readonly store: PlanStore;
  readonly wait: (ms: number) => Promise<void>;
}

/** One for all, or it would look new with every drawing. */
const NO_CLEANINGS: readonly PlannedCleaning[] = [];

/** What the planner said to the last thing asked of it; null where it did it. */
export type NotDone = Exclude<Asked<never>, { phase: 'here' }>;

/** What the page has of the planner: the plan in force, days that were proposed, what is tried in the next. */
export class PlanDesk implements ReactiveController {
  status: PlanStatus | null = null;
  isFailed = false;
  /** Of every date, the oldest first. */
  proposals: readonly Proposal[] = [];
  /** Which of them is looked at; null: the plan in force. */
  shownId: string | null = null;
  tried: readonly TriedChange[] = [];
  notDone: NotDone | null = null;
  readonly #host: ReactiveControllerHost;
  readonly #tools: () => PlanTools;
  readonly #followed = new Set<string>();
  readonly #dropped = new Set<string>();
  /** In the order in which the page came to know them. */
  readonly #named: string[] = [];
  #isGone = false;
  #asks = 0;
  #toldAsk = 0;
  /** Asked for here, and to be looked at as soon as it is found. */
  #awaitedId: string | null = null;

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

  /** The day that is looked at, once it is found. */
  get shown(): ProposalDone | null {
    const shown = this.proposals.find(({ id }) => id === this.shownId);
    return shown?.status === 'done' ? shown : null;
  }

  /** Those of the day that is looked at, or of the plan in force. */
  get cleanings(): readonly PlannedCleaning[] {
    return this.shown?.cleanings ?? this.status?.plan?.cleanings ?? NO_CLEANINGS;
  }

  /** Days of a date, the oldest first, each with a name that it keeps as long as the page is open. */
  named(serviceDate: string): readonly { readonly name: string; readonly proposal: Proposal }[] {
    return this.proposals
      .filter((proposal) => proposal.serviceDate === serviceDate)
      .map((proposal) => ({ name: PLANNING.proposal(letterOf(this.#named.indexOf(proposal.id))), proposal }));
  }

  /** Fetches what the planner has, and every proposal that this page has not seen; those that it has, where they may be out of date. */
  async fetchStatus(areOutdated = true): Promise<void> {
    this.#asks += 1;
    const ask = this.#asks;
    const asked = await this.#tools().store.status();
    // Of several that were asked at once, an older answer may come last.
    if (ask < this.#toldAsk) return;
    this.#toldAsk = ask;
    this.isFailed = asked.phase !== 'here';
    if (asked.phase === 'here') {
      this.status = asked.value;
      const there = new Set(asked.value.proposals.map(({ id }) => id));
      this.proposals = this.proposals.filter(({ id }) => there.has(id) || this.#followed.has(id));
      const isKnown = (id: string): boolean => this.proposals.some((proposal) => proposal.id === id);
      for (const { id } of asked.value.proposals) if (areOutdated || !isKnown(id)) this.#follow(id);
    }
    this.#host.requestUpdate();
  }

  /** Plans a day with what is to be tried. */
  async propose(serviceDate: string): Promise<void> {
    const asked = await this.#tools().store.propose(askWith(serviceDate, this.tried));
    this.#answered(asked);
    if (asked.phase === 'here') {
      // What is looked at stays until there is something else to look at.
      this.#awaitedId = asked.value.id;
      this.#take(asked.value);
      this.#follow(asked.value.id);
    }
    this.#host.requestUpdate();
  }

  /** Something more is to be tried in the next proposal. */
  try(change: TriedChange): void {
    this.tried = withTried(this.tried, change);
    this.#host.requestUpdate();
  }

  takeBack(change: TriedChange): void {
    this.tried = this.tried.filter((other) => other !== change);
    this.#host.requestUpdate();
  }

  /** Another date: what was to be tried was about the other one. */
  leaveDate(): void {
    this.tried = [];
    this.shownId = null;
    this.#awaitedId = null;
    this.notDone = null;
  }

  /** Looks at another day. What it was asked for with is what the next one begins with. */
  show(id: string | null): void {
    this.#awaitedId = null;
    this.shownId = id;
    const { shown } = this;
    this.tried = shown === null ? [] : triedIn(shown.ask);
    this.#host.requestUpdate();
  }

  /** Stops one that runs, drops one that is done or offered. */
  async drop(id: string): Promise<void> {
    const asked = await this.#tools().store.drop(id);
    this.#answered(asked.phase === 'missing' ? { phase: 'here', value: null } : asked);
    if (this.notDone === null) this.#forget(id);
    await this.fetchStatus();
  }

  /** The floor is to follow a proposal, or an offer. Whether it does. */
  async keep(id: string): Promise<boolean> {
    const asked = await this.#tools().store.keep(id);
    this.#answered(asked);
    if (asked.phase !== 'here') {
      await this.fetchStatus();
      return false;
    }
    this.tried = [];
    // It is in force now: beside itself it would only look out of date. Where it cannot be dropped, it is only not shown.
    this.#forget(id);
    this.shownId = null;
    await this.#tools().store.drop(id);
    await this.fetchStatus();
    return true;
  }

  #forget(id: string): void {
    this.#dropped.add(id);
    this.proposals = this.proposals.filter((proposal) => proposal.id !== id);
    if (this.shownId === id) this.shownId = null;
  }

  #answered(asked: Asked<unknown>): void {
    this.notDone = asked.phase === 'here' ? null : asked;
  }

  #take(proposal: Proposal): void {
    const isKnown = this.proposals.some(({ id }) => id === proposal.id);
    if (!this.#named.includes(proposal.id)) this.#named.push(proposal.id);
    if (proposal.status === 'done' && proposal.id === this.#awaitedId) {
      this.#awaitedId = null;
      this.shownId = proposal.id;
    }
    this.proposals = isKnown ? this.proposals.map((each) => (each.id === proposal.id ? proposal : each)) : [...this.proposals, proposal];
  }

  #follow(id: string): void {
    const known = this.proposals.find((proposal) => proposal.id === id);
    if (this.#followed.has(id) || this.#dropped.has(id) || known?.status === 'failed') return;
    this.#followed.add(id);
    void this.#ask(id).finally(() => this.#followed.delete(id));
  }

  /** Asks for a proposal until it no longer runs. One that is gone, or a link that is, ends it. */
  async #ask(id: string): Promise<void> {
    const { store, wait } = this.#tools();
    for (;;) {
      const asked = await store.proposal(id);
      if (this.#isGone || this.#dropped.has(id)) return;
      if (asked.phase !== 'here') {
        if (asked.phase === 'missing') this.proposals = this.proposals.filter((proposal) => proposal.id !== id);
        this.#host.requestUpdate();
        return;
      }
      this.#take(asked.value);
      this.#host.requestUpdate();
      if (asked.value.status !== 'running') return;
      await wait(ASK_AGAIN_MS);
    }
  }
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

function letterOf(index: number): string {
  const letter = LETTERS.charAt(index % LETTERS.length);
  const round = Math.floor(index / LETTERS.length);
  return round === 0 ? letter : `${letter}${round + 1}`;
}
