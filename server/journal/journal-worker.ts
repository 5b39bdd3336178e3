import { parentPort, workerData } from 'node:worker_threads';
import { assert } from '../../shared/result.ts';
import { appendTold } from './journal-desk.ts';
import type { ToJournalThread } from './journal-messages.ts';
import { SqliteJournal } from './sqlite-journal.ts';

// A thread of its own: see threaded-journal.ts for the other end.
const port = parentPort;
const path: unknown = workerData;
assert(port !== null && typeof path === 'string', 'the journal’s file is written by a worker thread that knows its path');
const journal = new SqliteJournal(path);
let last: Promise<void> = Promise.resolve();

async function take(message: ToJournalThread): Promise<void> {
  if (message.type === 'close') {
    await journal.close();
    port?.close();
    return;
  }
  const answer = await appendTold(journal, message);
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
  port?.postMessage(answer);
}

port.on('message', (message: ToJournalThread) => {
  last = last.then(() => take(message));
});
