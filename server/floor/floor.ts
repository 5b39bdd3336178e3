import type { Logger } from 'pino';
import type { FloorCommand, TapTime } from '../../shared/floor/commands.ts';
import { decide } from '../../shared/floor/decide.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import type { Outcome, Refusal } from '../../shared/floor/refusals.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { canBeUndone } from '../../shared/floor/undo-memory.ts';
import { tapInstant } from '../../shared/floor/tap-time.ts';
import { assert } from '../../shared/result.ts';
import { JournalError, type Journal, type JournalEntry } from '../journal/journal.ts';

/** Commands decided and appended in one go; the rest wait for the next. */
const MAX_GROUP = 500;
/** Outcomes kept at hand for repeats; older ones are looked up in the journal. */
const OUTCOMES_AT_HAND = 5_000;

/** A command on its way to the one writer. */
export interface Submission {
  readonly commandId: string;
  readonly deviceId: string;
  readonly stationId: string | null;
  readonly command: FloorCommand;
  /** When the thumb was there; null for what the house itself says. */
  readonly tap: TapTime | null;
}

/** What one group of commands came to. */
export interface Committed {
  readonly state: FloorState;
  readonly events: readonly RecordedEvent[];
}

export interface FloorOptions {
  readonly kitchenId: string;
  readonly journal: Journal;
  /** The fold of the whole journal. */
  readonly state: FloorState;
  readonly clock: { nowMs(): number; readonly pace: number };
  readonly log: Pick<Logger, 'error' | 'warn'>;
  /** Runs something soon, when whatever arrives together has arrived. */
  readonly defer: (run: () => void) => void;
}

interface Waiting {
  readonly submission: Submission;
  readonly answer: (outcome: Outcome) => void;
}

/**
 * The one writer of a kitchen. It takes the commands that wait, decides and folds them one after another on a tentative
 * state, appends their events as one group, and only then acknowledges and publishes. A failed append drops the tentative
 * state and refuses the group.
 */
export class Floor {
  readonly #options: FloorOptions;
  readonly #outcomes = new Map<string, Outcome>();
  readonly #listeners = new Set<(committed: Committed) => void>();
  #waiting: Waiting[] = [];
  #isWriting = false;
  #state: FloorState;
  #isWritable = true;
  #idle: (() => void)[] = [];

  constructor(options: FloorOptions) {
    this.#options = options;
    this.#state = options.state;
  }

  get state(): FloorState {
    return this.#state;
  }

  get kitchenId(): string {
    return this.#options.kitchenId;
  }

  /** Whether the last append was kept. */
  get isWritable(): boolean {
    return this.#isWritable;
  }

  /** Called after each group is on disk and its commands are answered. Returns the unsubscriber. */
  onCommitted(listener: (committed: Committed) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Gives a command to the writer. Resolves once its outcome is on disk; a known id gets its first outcome again. */
  submit(submission: Submission): Promise<Outcome> {
    return new Promise((resolve) => {
      this.#waiting.push({ submission, answer: resolve });
      if (this.#isWriting) return;
      this.#isWriting = true;
      this.#options.defer(() => void this.#write());
    });
  }

  /** Resolves when nothing waits and nothing is being written. */
  async settled(): Promise<void> {
    if (!this.#isWriting) return;
    await new Promise<void>((resolve) => this.#idle.push(resolve));
  }

  async #write(): Promise<void> {
    while (this.#waiting.length > 0) {
      await this.#writeGroup(this.#nextGroup());
    }
    this.#isWriting = false;
    for (const resolve of this.#idle.splice(0)) resolve();
  }

  /** A jump of the clock ends its group: what comes after it is decided by the clock that has followed it. */
  #nextGroup(): readonly Waiting[] {
    const jump = this.#waiting.findIndex(({ submission }) => submission.command.type === 'noteClockJump');
    return this.#waiting.splice(0, jump === -1 ? MAX_GROUP : Math.min(MAX_GROUP, jump + 1));
  }

  async #writeGroup(group: readonly Waiting[]): Promise<void> {
    let tentative = this.#state;
    const entries: JournalEntry[] = [];
    const events: RecordedEvent[] = [];
    const decided = new Map<string, Outcome>();
    /** Decided on the tentative state, and not answered before. */
    const fresh = new Set<string>();
    for (const { submission } of group) {
      const { commandId } = submission;
      if (decided.has(commandId)) continue;
      const known = await this.#knownOutcome(commandId);
      // Whether it was given before cannot be told: to decide it now could count it twice.
      if (known === 'unreadable') {
        decided.set(commandId, { ok: false, refusal: { code: 'notKept', cause: 'journalFailed' } });
        continue;
      }
      if (known !== null) {
        decided.set(commandId, known);
        continue;
      }
      const { outcome, recorded, entry } = this.#decide(tentative, submission);
      decided.set(commandId, outcome);
      fresh.add(commandId);
      tentative = evolveAll(tentative, recorded);
      events.push(...recorded);
      if (entry !== null) entries.push(entry);
    }
    const failure = await this.#append(entries);
    if (failure !== null) {
      for (const { submission, answer } of group) {
        const outcome = decided.get(submission.commandId);
        assert(outcome !== undefined, 'a command of the group was not decided');
        // What was refused on the state that is dropped may be right on the one that stands.
        answer(fresh.has(submission.commandId) ? { ok: false, refusal: failure } : outcome);
      }
      return;
    }
    this.#state = tentative;
    for (const { submission, answer } of group) {
      const outcome = decided.get(submission.commandId);
      assert(outcome !== undefined, 'a command of the group was not decided');
      this.#keepAtHand(submission.commandId, outcome);
      answer(outcome);
    }
    // After the answers, which resolve in a microtask of their own: acknowledged first, then published.
    await Promise.resolve();
    if (events.length > 0) for (const listener of this.#listeners) listener({ state: tentative, events });
  }

  #decide(state: FloorState, submission: Submission): { outcome: Outcome; recorded: readonly RecordedEvent[]; entry: JournalEntry | null } {
    const { commandId, deviceId, stationId, command, tap } = submission;
    const nowMs = this.#options.clock.nowMs();
    const { tapMs, uncertain } = tap === null ? { tapMs: nowMs, uncertain: false } : tapInstant(tap, nowMs, this.#options.clock.pace);
    const decision = decide(state, command, { commandId, deviceId, stationId, nowMs, tapMs, tapUncertain: uncertain });
    if (!decision.ok) {
      const outcome: Outcome = { ok: false, refusal: decision.fault };
      // What the house itself had to say and no longer has is nobody's answer, and not worth a line on disk.
      const entry = tap === null ? null : { commandId, deviceId, receivedMs: nowMs, events: [], outcome };
      return { outcome, recorded: [], entry };
    }
    const events = decision.value;
    const recorded = events.map((event, ordinal): RecordedEvent => ({
      sequence: state.sequence + ordinal + 1,
      commandId,
      ordinal,
      deviceId,
      event,
    }));
    const outcome: Outcome = {
      ok: true,
      sequence: state.sequence + events.length,
      undoable: tap !== null && events.some(canBeUndone),
    };
    return { outcome, recorded, entry: { commandId, deviceId, receivedMs: nowMs, events, outcome } };
  }

  async #append(entries: readonly JournalEntry[]): Promise<Extract<Refusal, { code: 'notKept' }> | null> {
    if (entries.length === 0) return null;
    try {
      await this.#options.journal.append(this.#options.kitchenId, this.#state.sequence, entries);
      this.#isWritable = true;
      return null;
    } catch (error) {
      if (!(error instanceof JournalError)) throw error;
      this.#isWritable = false;
      this.#options.log.error({ err: error, commands: entries.length }, 'the journal did not keep a group of commands; they are refused');
      return { code: 'notKept', cause: error.code === 'diskFull' ? 'diskFull' : 'journalFailed' };
    }
  }

  async #knownOutcome(commandId: string): Promise<Outcome | null | 'unreadable'> {
    const atHand = this.#outcomes.get(commandId);
    if (atHand !== undefined) return atHand;
    try {
      return await this.#options.journal.outcomeOf(this.#options.kitchenId, commandId);
    } catch (error) {
      if (!(error instanceof JournalError)) throw error;
      this.#isWritable = false;
      this.#options.log.error({ err: error, commandId }, 'the journal could not say whether it knows a command; the command is refused');
      return 'unreadable';
    }
  }

  #keepAtHand(commandId: string, outcome: Outcome): void {
    // Nothing happened: the same command may come again and be kept.
    if (!outcome.ok && outcome.refusal.code === 'notKept') return;
    this.#outcomes.set(commandId, outcome);
    if (this.#outcomes.size <= OUTCOMES_AT_HAND) return;
    const oldest = this.#outcomes.keys().next();
    if (oldest.done !== true) this.#outcomes.delete(oldest.value);
  }
}
