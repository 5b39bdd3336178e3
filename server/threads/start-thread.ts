import { once } from 'node:events';
import { Worker } from 'node:worker_threads';

/** What a thread is given to be heard by. `died` is called once, when it has ended and nobody ended it. */
export interface ThreadEars<From> {
  hear(message: From): void;
  died(error: Error): void;
}

/** A thread that runs, seen from the one that started it. */
export interface Thread<To> {
  readonly say: (message: To) => void;
  /** Says a last word, after which the thread ends by itself, and waits until it has. */
  readonly endWith: (message: To) => Promise<void>;
  /** Ends it at once, whatever it is at. */
  readonly terminate: () => Promise<void>;
}

/**
 * Starts a worker thread of Node's on a built file. `whose` names it where it ends by itself: "the journal's thread". A process that ends
 * does not wait for it, unless it is ended with a last word.
 */
export function startThread<To, From>(file: URL, workerData: unknown, ears: ThreadEars<From>, whose: string): Thread<To> {
  // Nothing of how this process was started is for it: a program given on the command line would be run again.
  const worker = new Worker(file, { execArgv: [], workerData });
  let isOver = false;
  const over = (error: Error): void => {
    if (isOver) return;
    isOver = true;
    ears.died(error);
  };
  worker.on('message', (message: From) => ears.hear(message));
  worker.on('messageerror', over);
  worker.on('error', over);
  worker.on('exit', (code) => over(new Error(`${whose} ended with exit code ${code}`)));
  worker.unref();
  const say = (message: To): void => {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
    worker.postMessage(message);
  };
  return {
    say,
    endWith: async (message) => {
      if (isOver) return;
      isOver = true;
      worker.ref();
      const ended = once(worker, 'exit');
      say(message);
      await ended;
    },
    terminate: async () => {
      isOver = true;
      await worker.terminate();
    },
  };
}
