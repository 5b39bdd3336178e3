import { parentPort, workerData } from 'node:worker_threads';
import { assert } from '../../shared/result.ts';
import { makeBackup } from './make-backup.ts';

// A thread of its own for each backup: copying and checking a long journal takes seconds, and no tap waits for it.
const asked: unknown = workerData;
assert(parentPort !== null && isAsked(asked), 'a backup is made by a worker thread that knows of what, where and when');
// oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
parentPort.postMessage(await makeBackup(asked.dataFolder, asked.into, asked.nowMs));

function isAsked(told: unknown): told is { dataFolder: string; into: string; nowMs: number } {
  return typeof told === 'object' && told !== null && 'dataFolder' in told && 'into' in told && 'nowMs' in told;
}
