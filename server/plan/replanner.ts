import type { Logger } from 'pino';
import { MOST_MOVED } from '../../shared/floor/events.ts';
import type { FloorEvent } from '../../shared/floor/events.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import type { Offer, PlanFault } from '../../shared/plan/plan-api.ts';
import type { HouseClock } from '../clock/house-clock.ts';
import { AlarmClock, type Timers } from '../floor/alarm-clock.ts';
import type { Floor } from '../floor/floor.ts';
import { HOUSE_DEVICE_ID } from '../floor/house-device.ts';
import { isDisturbance } from './disturbs.ts';
import type { Hint } from './jobs/moved-because.ts';
import type { PlannerAnswer, Replanned } from './jobs/planner-job.ts';
import { isClearlyBetter } from './clearly-better.ts';
import type { Keeper } from './keep-proposal.ts';
import { nextOverdueMs, OVERDUE_MS } from './overdue.ts';
import { JobDropped, PlannerBroken } from './planner-thread.ts';
import type { Planner, Running } from './planner.ts';

/** A re-plan that more was tapped during is made anew, but not more often than this. */
const MOST_ANEW = 3;
/** How soon it is tried again where the journal or the planner failed, and how long at most if it fails again and again. Real time. */
const RETRY_MS = 2_000;
const LONGEST_RETRY_MS = 5 * 60_000;
/** Late steps are looked at again no sooner than this, whatever the pace. Real time. */
const LEAST_WAIT_MS = 1_000;
/** A better plan is sought once the floor has been quiet for so long. Real time. */
const QUIET_MS = 5_000;
/** Searches are the same again for the same state. */
const SEED = 1;

export interface ReplannerOptions {
  readonly floor: Floor;
  readonly planner: Planner;
  readonly clock: Pick<HouseClock, 'nowMs' | 'realUntilMs'>;
  readonly timers: Timers;
  readonly newId: () => string;
  readonly log: Pick<Logger, 'error'>;
  /** There is something else to be told than before, which stands in no event. */
  readonly onNews: () => void;
}

/**
 * Keeps the plan in force true: one re-plan for each thing that happens, or for several that happen together, and for
 * what does not happen in time. What is found to be better afterwards is only offered.
 */
export class Replanner {
  readonly #options: ReplannerOptions;
  readonly #overdue: AlarmClock;
  readonly #quiet: AlarmClock;
  readonly #stopListening: () => void;
  /** What the disturbances were about that no re-plan has taken in yet; null where there are none. */
  #disturbed: Hint | null = null;
  /** The plan in force as it was last looked at; null where nobody has yet. */
  #known: Replanned | null = null;
  #isReplanning = false;
  #isStopped = false;
  #lookedMs = 0;
  #disturbanceCount = 0;
  #failures = 0;
  #fault: PlanFault | null = null;
  #improving: Running | null = null;
  #offer: { readonly offer: Offer; readonly plan: Replanned } | null = null;
  #idle: (() => void)[] = [];

  constructor(options: ReplannerOptions) {
    this.#options = options;
    this.#overdue = new AlarmClock(options.timers, () => this.#lookAtTime());
    this.#quiet = new AlarmClock(options.timers, () => void this.#improve());
    this.#stopListening = options.floor.onCommitted(({ events }) => {
      const disturbances = events.filter(({ event }) => isDisturbance(event));
      // Nobody has looked yet what a new plan costs as it is followed.
      if (disturbances.some(({ event }) => event.type === 'planAdopted')) this.#known = null;
      if (disturbances.length > 0) this.#disturb(hintOf(disturbances.map(({ event }) => event)));
    });
  }

  get isReplanning(): boolean {
    return this.#isReplanning;
  }

  /** Why the last re-plan came to nothing; null where it went well. */
  get fault(): PlanFault | null {
    return this.#fault;
  }

  get offers(): readonly Offer[] {
    return this.#offer === null ? [] : [this.#offer.offer];
  }

  /** What the plan in force comes to and its cleanings, as it was last looked at; null where nobody has yet. */
  get known(): Pick<Replanned, 'figures' | 'cleanings'> | null {
    return this.#known;
  }

  /** Looks at the plan now, as after a start: time has gone by meanwhile. */
  look(): void {
    this.#disturb('search');
  }

  /** Resolves when no re-plan is under way. */
  async settled(): Promise<void> {
    if (!this.#isReplanning) return;
    await new Promise<void>((resolve) => this.#idle.push(resolve));
  }

  /** Has the plan moved as it was offered; null where there is no such offer (any more). */
  async keep(offerId: string, keeper: Keeper): Promise<Outcome | null> {
    const kept = this.#offer;
    if (kept === null || kept.offer.id !== offerId) return null;
    this.#offer = null;
    const { floor, newId } = this.#options;
    const outcome = await floor.submit({ commandId: newId(), ...keeper, tap: null, command: commandOf(kept.plan) });
    if (outcome.ok) this.#known = kept.plan;
    return outcome;
  }

  /** Forgets an offer; false where there is no such one. */
  dismiss(offerId: string): boolean {
    if (this.#offer?.offer.id !== offerId) return false;
    this.#offer = null;
    this.#options.onNews();
    return true;
  }

  stop(): void {
    this.#isStopped = true;
    this.#stopListening();
    this.#overdue.setMs(null);
    this.#quiet.setMs(null);
    this.#improving?.drop();
  }

  #disturb(hint: Hint): void {
    // What was offered was better than a plan that is no longer the one in force.
    this.#offer = null;
    this.#disturbanceCount += 1;
    this.#quiet.setMs(null);
    if (this.#options.floor.state.plan === null) return;
    this.#disturbed = this.#disturbed === null || hint !== 'search' ? hint : this.#disturbed;
    if (!this.#isReplanning && !this.#isStopped) void this.#work();
  }

  async #work(): Promise<void> {
    this.#isReplanning = true;
    let failed = false;
    while (this.#disturbed !== null && !this.#isStopped && !failed) failed = !(await this.#replan());
    this.#isReplanning = false;
    this.#options.onNews();
    for (const resolve of this.#idle.splice(0)) resolve();
    if (this.#isStopped) return;
    this.#failures = failed ? this.#failures + 1 : 0;
    if (failed) return this.#overdue.setMs(Math.min(RETRY_MS * 2 ** (this.#failures - 1), LONGEST_RETRY_MS));
    this.#setOverdue();
    this.#quiet.setMs(QUIET_MS);
  }

  /** One re-plan, adopted; false where the journal or the planner failed and it is to be tried again. */
  async #replan(): Promise<boolean> {
    let answer: PlannerAnswer | null = null;
    for (let time = 0; time <= MOST_ANEW && this.#disturbed !== null; time += 1) {
      const hint: Hint = this.#disturbed;
      this.#disturbed = null;
      this.#lookedMs = this.#options.clock.nowMs();
      try {
        answer = await this.#options.planner.replan(this.#lookedMs, SEED, hint, this.#known?.cost ?? null);
      } catch (error) {
        return this.#failed(error, hint);
      }
    }
    if (answer === null || answer.kind !== 'replanned' || this.#isStopped) return true;
    return this.#adopt(answer.plan);
  }

  async #adopt(plan: Replanned): Promise<boolean> {
    const { floor, newId } = this.#options;
    const isSaidAlready = JSON.stringify(plan.warnings) === JSON.stringify(floor.state.plan?.warnings ?? []);
    this.#fault = null;
    if (plan.starts.length === 0 && isSaidAlready) {
      this.#known = plan;
      return true;
    }
    const outcome = await floor.submit({
      commandId: newId(),
      deviceId: HOUSE_DEVICE_ID,
      stationId: null,
      tap: null,
      command: commandOf(plan),
    });
    if (outcome.ok || outcome.refusal.code === 'nothingChanges') {
      this.#known = plan;
      return true;
    }
    this.#fault = { code: outcome.refusal.code, message: `the plan could not be moved: ${outcome.refusal.code}` };
    if (outcome.refusal.code !== 'notKept') this.#options.log.error({ refusal: outcome.refusal }, 'the floor refused a re-plan');
    this.#disturbed ??= 'search';
    return false;
  }

  /** The house ends, or the planner broke down: then it is tried again, a little later, on what is true then. */
  #failed(error: unknown, hint: Hint): boolean {
    if (error instanceof JobDropped) return true;
    if (!(error instanceof PlannerBroken)) throw error;
    this.#fault = { code: 'crashed', message: 'the planner failed; what it said is in the server’s log' };
    this.#disturbed ??= hint;
    return false;
  }

  #lookAtTime(): void {
    if (this.#disturbed !== null) {
      if (!this.#isReplanning && !this.#isStopped) void this.#work();
      return;
    }
    const { floor, clock } = this.#options;
    const overdueMs = nextOverdueMs(floor.state);
    const dueMs = overdueMs === null ? null : Math.max(overdueMs, this.#lookedMs + OVERDUE_MS);
    if (dueMs !== null && dueMs <= clock.nowMs()) this.#disturb('search');
    else this.#setOverdue();
  }

  #setOverdue(): void {
    const { floor, clock } = this.#options;
    const overdueMs = floor.state.plan === null ? null : nextOverdueMs(floor.state);
    if (overdueMs === null) return this.#overdue.setMs(null);
    // What is late already was looked at just now.
    const waitMs = clock.realUntilMs(Math.max(overdueMs, this.#lookedMs + OVERDUE_MS));
    this.#overdue.setMs(Math.max(waitMs, LEAST_WAIT_MS));
  }

  async #improve(): Promise<void> {
    const { planner, clock, floor } = this.#options;
    if (this.#improving !== null || this.#isStopped || floor.state.plan === null) return;
    const disturbanceCount = this.#disturbanceCount;
    const nowMs = clock.nowMs();
    const budget = { schedules: planner.budgets.improve, seed: SEED };
    const running = planner.search({ kind: 'improve', nowMs, budget }, true);
    this.#improving = running;
    const answer = await this.#improved(running);
    this.#improving = null;
    if (this.#isStopped) return;
    // What was found is better than a plan that is no longer in force; the floor may have been quiet since.
    if (this.#disturbanceCount !== disturbanceCount) return this.#quiet.setMs(this.#isReplanning ? null : QUIET_MS);
    if (answer === null) return;
    const { before, plan } = answer;
    if (plan.starts.length === 0 || !isClearlyBetter(before, plan.figures)) return;
    const offer: Offer = {
      id: this.#options.newId(),
      madeMs: clock.nowMs(),
      before,
      after: plan.figures,
      moved: plan.moved.slice(0, MOST_MOVED),
    };
    this.#offer = { offer, plan };
    this.#options.onNews();
  }

  async #improved(running: Running): Promise<Extract<PlannerAnswer, { kind: 'improved' }> | null> {
    try {
      const answer = await running.answer;
      return answer.kind === 'improved' ? answer : null;
    } catch (error) {
      // It gave way to what somebody asked for, or broke down, which is in the log: nobody waits for it.
      if (error instanceof JobDropped || error instanceof PlannerBroken) return null;
      throw error;
    }
  }
}

function commandOf({ starts, moved, warnings }: Replanned): CommandOf<'adoptReplan'> {
  return { type: 'adoptReplan', isWhole: false, starts: [...starts], moved: [...moved], warnings: [...warnings] };
}

/** What moves are about that nothing in the day itself holds where they are. */
function hintOf(events: readonly FloorEvent[]): Hint {
  if (events.some(({ type }) => type === 'orderPlaced' || type === 'orderWithdrawn')) return 'order';
  if (events.some(({ type }) => type === 'pinSet' || type === 'pinLifted')) return 'pin';
  return 'search';
}
