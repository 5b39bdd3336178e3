import { execFile } from 'node:child_process';
import type { Timers } from '../floor/alarm-clock.ts';

/** Tells the service manager something (sd_notify(3)); Node has no datagram sockets of the local kind, so systemd's own program says it. */
export type Notify = (state: string) => void;

const US_PER_MS = 1000;
/** systemd advises to speak up in half of its time (sd_watchdog_enabled(3)); a third leaves room for one that is late. */
const SHARE = 3;

export interface WatchdogOptions {
  /** `WATCHDOG_USEC` as systemd gives it; undefined where nobody watches. */
  readonly watchdogUsec: string | undefined;
  readonly notify: Notify;
  readonly timers: Timers;
  /** Asks the house's journal something. However it answers, it does: a disk that is full is told on the walls, and no restart makes room. */
  readonly probe: () => Promise<unknown>;
}

/**
 * Tells systemd that the house is up, and again and again that it is well. A house that is stuck, or whose journal does not answer, falls
 * silent, and is started anew. Returns what says that it goes down.
 */
export function keepWatchdog({ watchdogUsec, notify, timers, probe }: WatchdogOptions): () => void {
  notify('READY=1');
  const periodMs = Number(watchdogUsec ?? Number.NaN) / US_PER_MS / SHARE;
  let timer: { cancel(): void } | null = null;
  let hasAnswered = true;
  const answered = (): void => {
    hasAnswered = true;
  };
  const speak = (): void => {
    if (hasAnswered) {
      notify('WATCHDOG=1');
      hasAnswered = false;
      probe().then(answered, answered);
    }
    timer = timers.set(speak, periodMs);
  };
  if (periodMs > 0) speak();
  return () => {
    timer?.cancel();
    notify('STOPPING=1');
  };
}

/** By systemd's own program, where systemd has started this process; nothing elsewhere. */
export function systemdNotify(environment: NodeJS.ProcessEnv, onFault: (error: Error) => void): Notify {
  if ((environment['NOTIFY_SOCKET'] ?? '') === '') return () => {};
  return (state) => {
    execFile('systemd-notify', [`--pid=${process.pid}`, state], (error) => {
      if (error !== null) onFault(error);
    });
  };
}
