import { linkSync, mkdirSync, readFileSync, rmSync, statSync, unlinkSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/** How often a waiting process looks whether the lock is free, in milliseconds. */
const LOOK_AGAIN_MS = 100;

/** The take-over guard is held for a few file operations; one older than this was left by a crash. Milliseconds. */
const GUARD_OLD_MS = 10_000;

/**
 * Who holds a lock. The start time tells a living holder from another process that was given a dead one's number, as happens at once
 * in a container that is started again.
 *
 * @typedef {{ pid: number, started: string }} Holder
 */

/**
 * When a process was started, in the kernel's own words; '' where there is no such process or the system does not tell (no /proc).
 * Source of the field: proc(5), /proc/pid/stat, field 22 "starttime", counted after the last ')' because field 2 may hold anything.
 *
 * @param {number} pid
 */
export function startOf(pid) {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
  } catch {
    return '';
  }
}

/** Whether the holder of a lock still runs. */
export function isAlive(/** @type {Holder} */ holder) {
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    // EPERM: it runs, under another user.
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EPERM') return false;
  }
  const started = startOf(holder.pid);
  return started === '' || holder.started === '' || started === holder.started;
}

/**
 * The holder written in a lock file, `undefined` where there is no file or nothing readable in it.
 *
 * @param {string} file
 * @returns {Holder | undefined}
 */
export function readHolder(file) {
  try {
    const holder = JSON.parse(readFileSync(file, 'utf8'));
    return Number.isInteger(holder?.pid) && typeof holder.started === 'string' ? holder : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Tries to take the lock once. A lock whose holder is dead is taken over.
 *
 * @param {string} file
 * @param {Holder} self
 * @returns {boolean} whether `self` holds it now
 */
export function tryLock(file, self) {
  mkdirSync(dirname(file), { recursive: true });
  if (createWhole(file, self)) return true;
  const holder = readHolder(file);
  if (holder !== undefined && isAlive(holder)) return false;
  removeStale(file, self);
  return createWhole(file, self);
}

/** Gives the lock back, if `self` holds it. */
export function unlock(/** @type {string} */ file, /** @type {Holder} */ self) {
  const holder = readHolder(file);
  if (holder?.pid === self.pid && holder.started === self.started) rmSync(file, { force: true });
}

/** This process as a holder. */
export function selfAsHolder() {
  return { pid: process.pid, started: startOf(process.pid) };
}

/**
 * Runs `work` while holding the lock, waiting for it as long as a living process holds it.
 *
 * @template Value
 * @param {string} file
 * @param {{ onWait: (pid: number) => void }} told told once, with the holder's process id, if there is somebody to wait for
 * @param {() => Promise<Value>} work
 * @returns {Promise<Value>}
 */
export async function withLock(file, { onWait }, work) {
  const self = selfAsHolder();
  let hasTold = false;
  while (!tryLock(file, self)) {
    const holder = readHolder(file);
    if (!hasTold && holder !== undefined) {
      onWait(holder.pid);
      hasTold = true;
    }
    await pause(LOOK_AGAIN_MS);
  }
  const release = () => unlock(file, self);
  process.on('exit', release);
  try {
    return await work();
  } finally {
    process.off('exit', release);
    release();
  }
}

/**
 * Creates the file with its content in one step: nobody can ever read a lock that does not yet say whose it is.
 *
 * @param {string} file
 * @param {Holder} self
 */
function createWhole(file, self) {
  const draft = `${file}.${self.pid}`;
  writeFileSync(draft, JSON.stringify(self));
  try {
    linkSync(draft, file);
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'EEXIST') return false;
    throw error;
  } finally {
    unlinkSync(draft);
  }
}

/**
 * Removes a lock whose holder is dead. Under a guard and after a second look: of two that saw the same dead holder, the slower must
 * not remove the lock that the faster has taken meanwhile.
 *
 * @param {string} file
 * @param {Holder} self
 */
function removeStale(file, self) {
  const guard = `${file}.guard`;
  if (!createWhole(guard, self)) {
    const age = statSync(guard, { throwIfNoEntry: false })?.mtimeMs;
    if (age !== undefined && Date.now() - age > GUARD_OLD_MS) rmSync(guard, { force: true });
    return;
  }
  try {
    const holder = readHolder(file);
    if (holder === undefined || !isAlive(holder)) rmSync(file, { force: true });
  } finally {
    rmSync(guard, { force: true });
  }
}
