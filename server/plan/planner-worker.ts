import { performance } from 'node:perf_hooks';
import { parentPort } from 'node:worker_threads';
import { assert } from '../../shared/result.ts';
import { PlannerDesk } from './planner-desk.ts';
import type { ToPlanner } from './planner-messages.ts';

// A thread of its own: see planner-thread.ts for the other end.
const port = parentPort;
assert(port !== null, 'the planner runs as a worker thread');
const desk = new PlannerDesk(
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
  (message) => port.postMessage(message),
  () => performance.now(),
);
port.on('message', (message: ToPlanner) => desk.take(message));
