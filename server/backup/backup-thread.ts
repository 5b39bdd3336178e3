import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { Backup } from './backup-folder.ts';

/** The file beside this one, as it is built: Node runs no TypeScript. */
const WORKER = new URL('backup-worker.js', import.meta.url);

/** Makes a backup in a thread of its own. Rejects with what `makeBackup` throws. */
export async function backupInThread(dataFolder: string, into: string, nowMs: number): Promise<Backup> {
  const worker = new Worker(WORKER, { execArgv: [], workerData: { dataFolder, into, nowMs } });
  // A server that goes down does not wait for a copy: what is half made is no backup.
  worker.unref();
  const [backup] = (await once(worker, 'message')) as [Backup];
  return backup;
}
