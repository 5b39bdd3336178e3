import { RecordsDesk } from '../../../server/records/records-desk.ts';
import type { StartRecordsThread } from '../../../server/records/start-records-thread.ts';

/**
 * The records' thread without a thread: its messages come one a turn of the event loop, copied as between threads. The real one runs built
 * code; it is tried in records-worker.test.ts.
 */
export const startRecordsHere: StartRecordsThread = (folder, ears) => {
  let isStopped = false;
  const desk = new RecordsDesk(
    folder,
    (message) => {
      const copied = structuredClone(message);
      if (!isStopped) ears.hear(copied);
    },
    { turn: () => new Promise((resolve) => void setImmediate(resolve)), later: (run) => void setImmediate(run) },
  );
  return {
    say: (message) => {
      const copied = structuredClone(message);
      setImmediate(() => void desk.take(copied));
    },
    stop: async () => {
      isStopped = true;
      await desk.take({ type: 'close' });
    },
  };
};
