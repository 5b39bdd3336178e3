import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { FromJournalThread, ToJournalThread } from './journal-messages.ts';

/** A journal's thread that runs, seen from the one that asks. */
export interface JournalPort {
  say(message: ToJournalThread): void;
  /** Ends it once it has closed the file. */
  stop(): Promise<void>;
}

/** What a thread is given to be heard by. `died` is called once, when it has ended and nobody stopped it. */
export interface JournalEars {
  hear(message: FromJournalThread): void;
  died(error: Error): void;
}

/** Starts a thread that appends to the journal's file at `path`. */
export type StartJournalThread = (path: string, ears: JournalEars) => JournalPort;

/** The file beside this one, as it is built: Node runs no TypeScript. */
const WORKER = new URL('journal-worker.js', import.meta.url);

/** A worker thread of Node's. */
export const startJournalWorker: StartJournalThread = (path, ears) => {
  // Nothing of how this process was started is for it: a program given on the command line would be run again.
  const worker = new Worker(WORKER, { execArgv: [], workerData: path });
  let isOver = false;
  const over = (error: Error): void => {
    if (isOver) return;
    isOver = true;
    ears.died(error);
  };
  worker.on('message', (message: FromJournalThread) => ears.hear(message));
  worker.on('messageerror', over);
  worker.on('error', over);
  worker.on('exit', (code) => over(new Error(`the journal's thread ended with exit code ${code}`)));
  // Whoever ends the server closes the journal first; a process that ends otherwise does not wait for a thread that waits.
  worker.unref();
  const say = (message: ToJournalThread): void => {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
    worker.postMessage(message);
  };
  return {
    say,
    stop: async () => {
      if (isOver) return;
      isOver = true;
      worker.ref();
      const ended = once(worker, 'exit');
      say({ type: 'close' });
      await ended;
    },
  };
};
