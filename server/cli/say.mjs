/** One line for the person at the terminal, on stderr: stdout belongs to the command that was asked for. */
export function say(/** @type {string} */ line) {
  process.stderr.write(`${line}\n`);
}

/** For commands whose stderr is a part of their answer. */
export function sayNothing(/** @type {string} */ _line) {}

/** A fault that the person at the terminal can do something about: shown as its message alone, without a stack. */
export class LaunchFault extends Error {
  /** @param {string} message @param {string} [details] the output of the tool that failed, shown above the message */
  constructor(message, details = '') {
    super(message);
    this.name = 'LaunchFault';
    this.details = details;
  }
}
