import { once } from 'node:events';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { Worker } from 'node:worker_threads';

/** How long a loop is watched before and after what is to be watched: the first and the last wait count, too. */
const SETTLE_MS = 20;
const IDLE = new URL('idle-loop-worker.js', import.meta.url);

/** The longest that a timer of one millisecond was late, in milliseconds: in this thread's loop, and meanwhile in one with nothing to do. */
export interface LongestWait {
  readonly loopMs: number;
  readonly idleMs: number;
}

/**
 * Watches how long the event loop of this thread makes others wait. Beside it an idle thread is watched, the floor: a machine
 * with few cores, all of them at work, makes anybody wait.
 */
export class LoopWatch {
  readonly #idle = new Worker(IDLE);

  async watched(run: () => Promise<void>): Promise<LongestWait> {
    const delay = monitorEventLoopDelay({ resolution: 1 });
    delay.enable();
    await pause();
    await this.#askIdle('begin');
    delay.reset();
    await run();
    await pause();
    delay.disable();
    return { loopMs: delay.max / 1e6, idleMs: await this.#askIdle('end') };
  }

  async stop(): Promise<void> {
    await this.#idle.terminate();
  }

  async #askIdle(message: 'begin' | 'end'): Promise<number> {
    const answer = once(this.#idle, 'message');
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
    this.#idle.postMessage(message);
    const [ms] = (await answer) as [number];
    return ms;
  }
}

function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, SETTLE_MS));
}
