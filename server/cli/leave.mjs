/** How long a command that has returned may be kept alive by what it left open, in milliseconds. */
const GRACE_MS = 1_000;

/**
 * Ends the process with `process.exitCode` once nothing is open any more, and after a grace even if something is. A command that has
 * returned its exit code is over; a forgotten socket must not keep a terminal waiting.
 */
export function leaveEvenIfHeldOpen() {
  setTimeout(() => process.exit(), GRACE_MS).unref();
}
