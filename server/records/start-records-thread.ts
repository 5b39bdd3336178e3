import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { FromRecords, ToRecords } from './records-messages.ts';

/** The records' thread that runs, seen from the house. */
export interface RecordsPort {
  say(message: ToRecords): void;
  /** Ends it once it has closed its files. */
  stop(): Promise<void>;
}

/** What a thread is given to be heard by. `died` is called once, when it has ended and nobody stopped it. */
export interface RecordsEars {
  hear(message: FromRecords): void;
  died(error: Error): void;
}

/** Starts a thread for the records of a data folder. */
export type StartRecordsThread = (dataFolder: string, ears: RecordsEars) => RecordsPort;

/** The file beside this one, as it is built: Node runs no TypeScript. */
const WORKER = new URL('records-worker.js', import.meta.url);

/** A worker thread of Node's. */
export const startRecordsWorker: StartRecordsThread = (dataFolder, ears) => {
  const worker = new Worker(WORKER, { execArgv: [], workerData: dataFolder });
  let isOver = false;
  const over = (error: Error): void => {
    if (isOver) return;
    isOver = true;
    ears.died(error);
  };
  worker.on('message', (message: FromRecords) => ears.hear(message));
  worker.on('messageerror', over);
  worker.on('error', over);
  worker.on('exit', (code) => over(new Error(`the records' thread ended with exit code ${code}`)));
  // What it holds is made of the journal: a process that ends otherwise does not wait for it.
  worker.unref();
  const say = (message: ToRecords): void => {
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
