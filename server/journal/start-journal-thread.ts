import { startThread, type ThreadEars } from '../threads/start-thread.ts';
import type { FromJournalThread, ToJournalThread } from './journal-messages.ts';

/** A journal's thread that runs, seen from the one that asks. */
export interface JournalPort {
  say(message: ToJournalThread): void;
  /** Ends it once it has closed the file. */
  stop(): Promise<void>;
}

/** What a thread is given to be heard by. */
export type JournalEars = ThreadEars<FromJournalThread>;

/** Starts a thread that appends to the journal's file at `path`. */
export type StartJournalThread = (path: string, ears: JournalEars) => JournalPort;

/** The file beside this one, as it is built: Node runs no TypeScript. */
const WORKER = new URL('journal-worker.js', import.meta.url);

/** A worker thread of Node's. Whoever ends the server closes the journal first. */
export const startJournalWorker: StartJournalThread = (path, ears) => {
  const { say, endWith } = startThread<ToJournalThread, FromJournalThread>(WORKER, path, ears, "the journal's thread");
  return { say, stop: () => endWith({ type: 'close' }) };
};
