import { startThread, type ThreadEars } from '../threads/start-thread.ts';
import type { FromRecords, ToRecords } from './records-messages.ts';

/** The records' thread that runs, seen from the house. */
export interface RecordsPort {
  say(message: ToRecords): void;
  /** Ends it once it has closed its files. */
  stop(): Promise<void>;
}

/** What a thread is given to be heard by. */
export type RecordsEars = ThreadEars<FromRecords>;

/** Starts a thread for the records of a data folder. */
export type StartRecordsThread = (dataFolder: string, ears: RecordsEars) => RecordsPort;

/** The file beside this one, as it is built: Node runs no TypeScript. */
const WORKER = new URL('records-worker.js', import.meta.url);

/** A worker thread of Node's. What it holds is made of the journal. */
export const startRecordsWorker: StartRecordsThread = (dataFolder, ears) => {
  const { say, endWith } = startThread<ToRecords, FromRecords>(WORKER, dataFolder, ears, "the records' thread");
  return { say, stop: () => endWith({ type: 'close' }) };
};
