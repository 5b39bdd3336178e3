import { join } from 'node:path';
import { withLock } from './lock.mjs';
import { BUILD } from './places.mjs';
import { say } from './say.mjs';

/**
 * Runs `work` while no other launcher installs or builds in this folder.
 *
 * @template Value
 * @param {() => Promise<Value>} work
 * @param {(line: string) => void} [tell] told whom is being waited for
 */
export function withLauncherLock(work, tell = say) {
  const onWait = (/** @type {number} */ pid) => tell(`waiting: process ${pid} is installing or building here…`);
  return withLock(join(BUILD, 'launch.lock'), { onWait }, work);
}
