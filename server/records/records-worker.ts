import { setImmediate } from 'node:timers/promises';
import { parentPort, workerData } from 'node:worker_threads';
import { assert } from '../../shared/result.ts';
import { RecordsDesk } from './records-desk.ts';
import type { FromRecords, ToRecords } from './records-messages.ts';

// The thread that makes and reads the records of a data folder: no report is worked on where taps are taken.
const port = parentPort;
const folder: unknown = workerData;
assert(port !== null && typeof folder === 'string', 'records are kept by a worker thread that knows their folder');
// oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
const say = (message: FromRecords): void => port.postMessage(message, message.type === 'poured' ? [message.bytes.buffer] : []);
const desk = new RecordsDesk(folder, say, {
  turn: () => setImmediate(),
  later: (run, delayMs) => void setTimeout(run, delayMs),
});
port.on('message', (message: ToRecords) => {
  void desk.take(message).then(() => {
    if (message.type === 'close') port.close();
  });
});
