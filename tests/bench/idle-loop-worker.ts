import { monitorEventLoopDelay } from 'node:perf_hooks';
import { parentPort } from 'node:worker_threads';
import { assert } from '../../shared/result.ts';

// A thread that does nothing but wait; see loop-watch.ts.
const port = parentPort;
assert(port !== null, 'the idle loop runs as a worker thread');
const delay = monitorEventLoopDelay({ resolution: 1 });
delay.enable();
port.on('message', (message: 'begin' | 'end') => {
  if (message === 'begin') delay.reset();
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin; windows have
  port.postMessage(delay.max / 1e6);
});
