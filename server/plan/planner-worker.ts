import { constants, setPriority } from 'node:os';
import { performance } from 'node:perf_hooks';
import { parentPort, workerData } from 'node:worker_threads';
import { assert } from '../../shared/result.ts';
import { PlannerDesk } from './planner-desk.ts';
import type { ToPlanner } from './planner-messages.ts';
import type { Urgency } from './start-thread.ts';

// A thread of its own: see planner-thread.ts for the other end.
const port = parentPort;
assert(port !== null, 'the planner runs as a worker thread');
// On Linux a priority is one thread's own (setpriority(2), "C library/kernel differences"); elsewhere it would be the whole server's.
if (process.platform === 'linux' && (workerData as Urgency) === 'patient') setPriority(constants.priority.PRIORITY_BELOW_NORMAL);
const desk = new PlannerDesk(
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
  (message) => port.postMessage(message),
  () => performance.now(),
);
port.on('message', (message: ToPlanner) => desk.take(message));
