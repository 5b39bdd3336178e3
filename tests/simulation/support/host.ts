import { assert } from '../../../shared/result.ts';
import type { VirtualTime } from './virtual-time.ts';

interface Timer {
  dueMs: number;
  readonly run: () => void;
  cancel: () => void;
}

/**
 * Something with timers and a monotonic clock of its own: a server's process, a page. While it sleeps its timers and its clock stand
 * still; once it is dead nothing of it happens any more.
 */
export class Host {
  readonly #time: VirtualTime;
  readonly #timers = new Set<Timer>();
  readonly #bornMs: number;
  readonly #works: 'atOnce' | 'byPromises';
  #isAlive = true;
  #asleepSinceMs: number | null = null;
  #sleptMs = 0;
  #arrivals: (() => void)[] = [];

  /** `works` is how: a server leaves promises behind, which have to settle before time goes on; a page does all at once. */
  constructor(time: VirtualTime, works: 'atOnce' | 'byPromises' = 'atOnce') {
    this.#time = time;
    this.#works = works;
    this.#bornMs = time.nowMs;
  }

  get isAlive(): boolean {
    return this.#isAlive;
  }

  get isAwake(): boolean {
    return this.#isAlive && this.#asleepSinceMs === null;
  }

  /** Since it was born, sleep left out. */
  get monotonicMs(): number {
    return (this.#asleepSinceMs ?? this.#time.nowMs) - this.#bornMs - this.#sleptMs;
  }

  after(delayMs: number, run: () => void): () => void {
    if (!this.#isAlive) return () => {};
    assert(this.isAwake, 'what sleeps does nothing');
    const timer: Timer = { dueMs: this.#time.nowMs + Math.max(0, delayMs), run, cancel: () => {} };
    this.#timers.add(timer);
    this.#schedule(timer);
    return () => {
      timer.cancel();
      this.#timers.delete(timer);
    };
  }

  /** Something comes from outside: taken at once, or when it wakes; never once it is dead. */
  arrive(run: () => void): void {
    if (!this.#isAlive) return;
    if (this.isAwake) this.#run(run);
    else this.#arrivals.push(run);
  }

  sleep(ms: number): void {
    if (!this.isAwake) return;
    this.#asleepSinceMs = this.#time.nowMs;
    // Before its timers, so that it is awake when the first of them runs.
    this.#time.after(ms, () => this.#wake(ms));
    for (const timer of this.#timers) {
      timer.cancel();
      timer.dueMs += ms;
      this.#schedule(timer);
    }
  }

  die(): void {
    this.#isAlive = false;
    for (const timer of this.#timers) timer.cancel();
    this.#timers.clear();
    this.#arrivals = [];
  }

  #wake(sleptMs: number): void {
    if (!this.#isAlive) return;
    this.#asleepSinceMs = null;
    this.#sleptMs += sleptMs;
    for (const run of this.#arrivals.splice(0)) this.#run(run);
  }

  #run(run: () => void): void {
    if (this.#works === 'byPromises') this.#time.leavesPromises();
    run();
  }

  #schedule(timer: Timer): void {
    timer.cancel = this.#time.at(timer.dueMs, () => {
      this.#timers.delete(timer);
      this.#run(timer.run);
    });
  }
}
