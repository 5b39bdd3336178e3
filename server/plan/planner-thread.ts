import type { Logger } from 'pino';
import type { PlanProgress } from '../../shared/plan/plan-api.ts';
import { unreachable } from '../../shared/result.ts';
import type { Floor } from '../floor/floor.ts';
import type { PlannerAnswer, PlannerJob } from './jobs/planner-job.ts';
import type { FromPlanner, ToPlanner } from './planner-messages.ts';
import type { StartThread, PlannerEars, ThreadPort, Urgency } from './start-thread.ts';
import { partsOf } from './state-parts.ts';

/** Events told at once at most. */
const EVENTS_AT_ONCE = 200;

/** A job came to nothing because of a bug, or because its thread ended; what it said is in the log. */
export class PlannerBroken extends Error {
  override readonly name = 'PlannerBroken';
}

/** A job was given up before it was done. */
export class JobDropped extends Error {
  override readonly name = 'JobDropped';
}

interface Pending {
  readonly progress: (progress: PlanProgress) => void;
  readonly resolve: (answer: PlannerAnswer) => void;
  readonly reject: (error: PlannerBroken | JobDropped) => void;
}

export interface PlannerThreadOptions {
  readonly floor: Pick<Floor, 'state' | 'onCommitted'>;
  readonly log: Pick<Logger, 'error'>;
  readonly start: StartThread;
  readonly urgency: Urgency;
  /** Runs something soon, when whatever else waits has had its turn. */
  readonly defer: (run: () => void) => void;
}

/**
 * The floor's end of one planner's thread. The thread is started with its first job, and again with the next one after it
 * has ended; it is told the state once and every event since, in pieces that hold up nobody.
 */
export class PlannerThread {
  readonly #options: PlannerThreadOptions;
  readonly #pending = new Map<number, Pending>();
  readonly #stopListening: () => void;
  #port: ThreadPort | null = null;
  #unsaid: (() => Iterator<ToPlanner, void>)[] = [];
  #saying: Iterator<ToPlanner, void> | null = null;
  #isPumping = false;
  #nextJobId = 1;

  constructor(options: PlannerThreadOptions) {
    this.#options = options;
    this.#stopListening = options.floor.onCommitted(({ events }) => {
      if (this.#port === null) return;
      this.#queue(function* inSlices() {
        for (let from = 0; from < events.length; from += EVENTS_AT_ONCE)
          yield { type: 'events', events: events.slice(from, from + EVENTS_AT_ONCE) };
      });
    });
  }

  /** Whether it is at something, or something waits for it. */
  get isBusy(): boolean {
    return this.#pending.size > 0;
  }

  /** Gives it a job on the state of this moment. Rejects with PlannerBroken or JobDropped. */
  async run(job: PlannerJob, progress: (progress: PlanProgress) => void = () => {}): Promise<PlannerAnswer> {
    this.#ensureStarted();
    const jobId = this.#nextJobId;
    this.#nextJobId += 1;
    return new Promise((resolve, reject) => {
      this.#pending.set(jobId, { progress, resolve, reject });
      // Whoever has just been answered asks before the thread has heard of it: what is recorded goes first.
      this.#options.defer(() => {
        if (!this.#pending.has(jobId)) return;
        this.#queue(function* one() {
          yield { type: 'job', jobId, job };
        });
      });
    });
  }

  /** Ends the thread in the middle of whatever it does; what it was given is dropped. The next job starts it again. */
  async drop(): Promise<void> {
    const port = this.#port;
    this.#forget(new JobDropped('the job was given up'));
    await port?.stop();
  }

  async stop(): Promise<void> {
    this.#stopListening();
    await this.drop();
  }

  #ensureStarted(): void {
    if (this.#port !== null) return;
    const ears: PlannerEars = {
      hear: (message) => {
        if (this.#port === port) this.#hear(message);
      },
      died: (error) => {
        if (this.#port !== port) return;
        const { message, stack } = error;
        this.#options.log.error({ message, stack }, 'the planner’s thread ended; it is started again with its next job');
        this.#forget(new PlannerBroken(error.message));
      },
    };
    const port = this.#options.start(ears, this.#options.urgency);
    this.#port = port;
    const { state } = this.#options.floor;
    this.#queue(function* parts() {
      for (const part of partsOf(state)) yield { type: 'part', part };
    });
  }

  #forget(why: PlannerBroken | JobDropped): void {
    this.#port = null;
    this.#unsaid = [];
    this.#saying = null;
    const pending = [...this.#pending.values()];
    this.#pending.clear();
    for (const { reject } of pending) reject(why);
  }

  #hear(message: FromPlanner): void {
    const pending = this.#pending.get(message.jobId);
    if (pending === undefined) return;
    if (message.type === 'progress') return pending.progress(message.progress);
    this.#pending.delete(message.jobId);
    switch (message.type) {
      case 'answer':
        return pending.resolve(message.answer);
      case 'broken':
        this.#options.log.error({ message: message.message, stack: message.stack }, 'a job of the planner failed');
        return pending.reject(new PlannerBroken(message.message));
      default:
        return unreachable(message);
    }
  }

  #queue(messages: () => Iterator<ToPlanner, void>): void {
    this.#unsaid.push(messages);
    if (!this.#isPumping) this.#pump();
  }

  /** Says the next message; whatever waits in this process has its turn before the one after. */
  #pump(): void {
    this.#isPumping = false;
    const port = this.#port;
    if (port === null) return;
    for (;;) {
      this.#saying ??= this.#unsaid.shift()?.() ?? null;
      if (this.#saying === null) return;
      const next = this.#saying.next();
      if (next.done === true) {
        this.#saying = null;
        continue;
      }
      port.say(next.value);
      break;
    }
    this.#isPumping = true;
    this.#options.defer(() => this.#pump());
  }
}
