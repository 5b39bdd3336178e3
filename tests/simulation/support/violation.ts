/** The invariants of the simulation. */
export type Rule =
  /** The server's state is the fold of its journal. */
  | 'S1'
  /** An acknowledged tap is in the journal, once. Nobody is told of what is not on disk. */
  | 'S2'
  /** The same command id, the same outcome for ever. */
  | 'S3'
  /** Healed and flushed: every page holds the server's state, nothing is kept any more, every tap has its outcome. */
  | 'S4'
  /** A call is raised once for each level, step and start, never before its time, and in the end always; clock jumps change nothing. */
  | 'S5'
  /** What has to sound is sounded where it can be, by one device; nothing counts as sounded that none was asked for and sounded. */
  | 'S6'
  /** Of two taps on one step one counts; the other is told who was first, and when. */
  | 'S7'
  /** Uncertain taps count at arrival; certain ones when they were, never before what came before nor in the future. */
  | 'S8'
  /** What a page is told has no gaps and does not run backwards. */
  | 'S9'
  /** Pages tell the house's time. */
  | 'S10'
  /** The floor holds together: nothing is in two places, holds what it has left, comes of itself or weighs what nothing brought. */
  | 'S11'
  /** A test of the loudspeakers is asked for once a day by itself, never while a dough is being lost, and counts as sounded by who sounded it. */
  | 'S14'
  /** One order to sound is out at a time: the next comes when it was answered, or nobody has answered for long enough. */
  | 'S16'
  /** Nothing throws. */
  | 'bug';

export interface Violation {
  readonly rule: Rule;
  readonly text: string;
}

/** Takes note of what went against an invariant; the first is what counts. */
export class Violations {
  #first: Violation | null = null;

  get first(): Violation | null {
    return this.#first;
  }

  report(rule: Rule, text: string): void {
    this.#first ??= { rule, text };
  }

  /** Reports where a condition does not hold. The text is only made then. */
  demand(rule: Rule, condition: boolean, text: () => string): void {
    if (!condition) this.report(rule, text());
  }
}
