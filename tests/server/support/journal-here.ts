import { appendTold } from '../../../server/journal/journal-desk.ts';
import type { FromJournalThread } from '../../../server/journal/journal-messages.ts';
import { SqliteJournal } from '../../../server/journal/sqlite-journal.ts';
import type { StartJournalThread } from '../../../server/journal/start-journal-thread.ts';

/**
 * A journal's thread without a thread: its messages come one a turn of the event loop, copied as between threads. The real one
 * runs built code; it is tried in plan-worker.test.ts.
 */
export const startJournalHere: StartJournalThread = (path, ears) => {
  const journal = new SqliteJournal(path);
  let last: Promise<void> = Promise.resolve();
  const answer = async (message: Parameters<typeof appendTold>[1]): Promise<void> => {
    const said: FromJournalThread = await appendTold(journal, message);
    const copied = structuredClone(said);
    setImmediate(() => ears.hear(copied));
  };
  return {
    say: (message) => {
      const copied = structuredClone(message);
      if (copied.type === 'append') last = last.then(() => answer(copied));
    },
    stop: async () => {
      await last;
      await journal.close();
    },
  };
};
