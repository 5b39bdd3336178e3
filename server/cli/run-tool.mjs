import { spawn } from 'node:child_process';
import { constants } from 'node:os';

/** How much of a tool's output is kept for the case that it fails, in characters. */
const KEPT_CHARACTERS = 64 * 1024;

/** How long a tool may take to end after a signal before it is killed, in milliseconds. */
const FAREWELL_MS = 2_000;

const SIGNALS = /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']);

/** The exit code by which shells report a death by that signal. */
export function exitCodeOf(/** @type {NodeJS.Signals} */ signal) {
  return 128 + constants.signals[signal];
}

/**
 * Runs a tool in the repository's root and waits for its end. A signal to this process is passed on; this process then ends with the
 * signal's exit code as soon as the tool has ended, so that no half-done install or build goes on behind a returned prompt.
 *
 * @param {string} file the program, an absolute path or a name on the PATH
 * @param {readonly string[]} args
 * @param {{ cwd: string, env?: NodeJS.ProcessEnv, show?: boolean }} options `show` passes the output through instead of keeping it
 * @returns {Promise<{ exitCode: number, output: string }>} exit code 127 and the reason where the program could not be started
 */
export function runTool(file, args, { cwd, env = process.env, show = false }) {
  return new Promise((resolve) => {
    /** @type {import('node:child_process').StdioOptions} */
    const stdio = show ? ['ignore', 'inherit', 'inherit'] : ['ignore', 'pipe', 'pipe'];
    // A process group of its own, so that a signal reaches the tool's own children too: npm's compilers, vitest's browsers.
    const child = spawn(file, args, { cwd, env, stdio, detached: true });
    let output = '';
    const keep = (/** @type {Buffer} */ chunk) => {
      output = (output + chunk.toString('utf8')).slice(-KEPT_CHARACTERS);
    };
    child.stdout?.on('data', keep);
    child.stderr?.on('data', keep);

    /** @type {NodeJS.Signals | undefined} */
    let received;
    const passOn = (/** @type {NodeJS.Signals} */ signal) => {
      received ??= signal;
      signalGroup(child, signal);
      setTimeout(() => signalGroup(child, 'SIGKILL'), FAREWELL_MS).unref();
    };
    for (const signal of SIGNALS) process.on(signal, passOn);

    let over = false;
    const end = (/** @type {number} */ exitCode) => {
      if (over) return;
      over = true;
      for (const signal of SIGNALS) process.off(signal, passOn);
      if (received !== undefined) process.exit(exitCodeOf(received));
      resolve({ exitCode, output });
    };
    child.on('error', (error) => {
      output += `${error.message}\n`;
      end(127);
    });
    child.on('close', (exitCode, signal) => end(exitCode ?? exitCodeOf(/** @type {NodeJS.Signals} */ (signal))));
  });
}

/**
 * Signals a child and everything it has started; nothing happens where all of it has ended already.
 *
 * @param {import('node:child_process').ChildProcess} child
 * @param {NodeJS.Signals} signal
 */
function signalGroup(child, signal) {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, signal);
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'ESRCH') throw error;
  }
}
