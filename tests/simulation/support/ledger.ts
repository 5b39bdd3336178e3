import type { JournalEntry } from '../../../server/journal/journal.ts';
import type { MemoryDisk } from '../../../server/journal/memory-journal.ts';
import type { FloorEvent, RecordedEvent } from '../../../shared/floor/events.ts';
import { evolve } from '../../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState } from '../../../shared/floor/state.ts';
import { subjectsOf } from '../../domain/support/gist.ts';
import { CallRules } from './call-rules.ts';
import { complaints, Scales } from '../../domain/support/invariants.ts';
import { countWord, type Counts, type WordCounts } from './counts.ts';
import { CLOCK_SLACK_MS, type HouseTruth } from './house-truth.ts';
import { checkJump } from './jump-rules.ts';
import { checkStepTaps } from './step-rules.ts';
import type { TapBook } from './tap-book.ts';
import { checkTapTimes } from './tap-time-rules.ts';
import type { Violations } from './violation.ts';
import type { VirtualTime } from './virtual-time.ts';

export interface LedgerOptions {
  readonly time: VirtualTime;
  readonly disk: MemoryDisk;
  readonly truth: HouseTruth;
  readonly taps: TapBook;
  readonly violations: Violations;
  readonly counts: Counts;
  /** Since when the server's clock has been right, in true time; Infinity while it lags behind after a sleep. */
  readonly clockRightSinceMs: () => number;
}

/** Whoever sounds, as the ledger asks about it. */
export interface SoundWitness {
  checkSounded(recorded: RecordedEvent): void;
}

/**
 * Reads what gets on the disk, as it gets there, and folds it by itself: the state that everybody else is measured against. What
 * each entry says is held against the state before it.
 */
export class Ledger {
  readonly #options: LedgerOptions;
  readonly #calls: CallRules;
  readonly #commandIds = new Set<string>();
  #readEvents = 0;
  readonly #touchedMs = new Map<string, number>();
  /** What the phones said, as it got on the disk. */
  readonly words: WordCounts = {};
  readonly #scales = new Scales();
  readonly #recorded: RecordedEvent[] = [];
  state: FloorState = EMPTY_STATE;
  sounds: SoundWitness | null = null;

  constructor(options: LedgerOptions) {
    this.#options = options;
    this.#calls = new CallRules(options.truth, options.violations, options.counts);
  }

  get sequence(): number {
    return this.#readEvents;
  }

  /** Whether a command's outcome has got on the disk. */
  has(commandId: string): boolean {
    return this.#commandIds.has(commandId);
  }

  /** When anything was last done about a workpiece, in true time. */
  touchedMs(workpieceId: string): number {
    return this.#touchedMs.get(workpieceId) ?? 0;
  }

  /** A group has been put on the disk. */
  kept(group: readonly JournalEntry[]): void {
    for (const entry of group) {
      const events = this.#options.disk.events
        .slice(this.#readEvents, this.#readEvents + entry.events.length)
        .map(({ recorded }) => recorded);
      this.#checkNumbers(entry, events);
      this.#checkReceived(entry);
      this.#checkTap(entry);
      for (const recorded of events) this.#fold(recorded);
    }
    this.#options.violations.demand(
      'S2',
      this.#readEvents === this.#options.disk.events.length,
      () => `the disk has ${this.#options.disk.events.length} events, its groups had ${this.#readEvents}`,
    );
  }

  #fold(recorded: RecordedEvent): void {
    const { time, truth, counts, violations } = this.#options;
    const before = this.state;
    const { event } = recorded;
    counts.events += 1;
    if (event.type === 'callRaised') this.#calls.raised(before, event, time.nowMs);
    else this.#calls.touched(event);
    if (event.type === 'callSounded') {
      counts.sounded += 1;
      this.sounds?.checkSounded(recorded);
    }
    this.#checkSoundTest(before, recorded);
    for (const workpieceId of touchedBy(event)) this.#touchedMs.set(workpieceId, time.nowMs);
    truth.take(recorded);
    this.state = evolve(before, recorded);
    this.#recorded.push(recorded);
    if (event.type === 'clockJumped') {
      counts.clockJumps += 1;
      checkJump(before, this.state, event.byMs, violations);
    }
    this.#readEvents += 1;
  }

  #checkSoundTest(before: FloorState, recorded: RecordedEvent): void {
    const { counts, violations } = this.#options;
    const { event } = recorded;
    if (event.type === 'soundTestSounded') {
      counts.testsSounded += 1;
      this.sounds?.checkSounded(recorded);
    }
    if (event.type !== 'soundTestAsked') return;
    counts.testsAsked += 1;
    const lost = Object.values(before.workpieces).filter(({ call, finishedMs }) => finishedMs === null && call?.level === 'lost');
    violations.demand('S14', lost.length === 0, () => `a test was asked for while ${lost[0]?.tag ?? ''} was being lost`);
    if (event.why !== 'daily' || before.soundTest === null) return;
    const zone = before.house?.document.zone ?? 'UTC';
    const at = before.house?.document.sound.testAt ?? '';
    // By the clock of this machine's ICU: a date begins at the test's time here.
    const dayOf = (atMs: number): string => {
      const format = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });
      const [date = '', clock = ''] = format.format(atMs).split(' ');
      return clock >= at ? date : format.format(Date.parse(`${date}T12:00Z`) - 86_400_000).slice(0, 10);
    };
    violations.demand('S14', dayOf(before.soundTest.askedMs) < dayOf(event.atMs), () => `a daily test was asked for twice in one day`);
  }

  /** What does not hold together on the floor as the disk has it: two in one place, weight from nowhere. */
  complaints(): readonly string[] {
    return [...complaints(this.state), ...this.#scales.weigh(this.#recorded).complaints(this.state)];
  }

  #checkNumbers(entry: JournalEntry, events: readonly RecordedEvent[]): void {
    const { violations } = this.#options;
    violations.demand('S2', !this.#commandIds.has(entry.commandId), () => `command ${entry.commandId} is in the journal twice`);
    this.#commandIds.add(entry.commandId);
    violations.demand(
      'S2',
      events.length === entry.events.length,
      () => `command ${entry.commandId} has ${events.length} of its ${entry.events.length} events on the disk`,
    );
    events.forEach((recorded, ordinal) => {
      const isRight =
        recorded.sequence === this.#readEvents + ordinal + 1 &&
        recorded.ordinal === ordinal &&
        recorded.commandId === entry.commandId &&
        recorded.deviceId === entry.deviceId;
      violations.demand(
        'S2',
        isRight,
        () => `event ${recorded.sequence} stands where event ${this.#readEvents + ordinal + 1} belongs, or is not of its command`,
      );
    });
  }

  #checkReceived({ commandId, receivedMs }: JournalEntry): void {
    const { time, truth, violations } = this.#options;
    if (!truth.isAnchored) return;
    const latestMs = truth.at(time.nowMs) + CLOCK_SLACK_MS * truth.pace;
    violations.demand(
      'S8',
      receivedMs <= latestMs,
      () => `command ${commandId} was taken ${Math.round(receivedMs - latestMs)} ms in the future`,
    );
  }

  #checkTap(entry: JournalEntry): void {
    const { taps, truth, violations, counts, time, clockRightSinceMs } = this.#options;
    const tap = taps.get(entry.commandId);
    if (tap === undefined) return;
    violations.demand('S2', tap.deviceId === entry.deviceId, () => `the tap ${entry.commandId} counts as another device's`);
    countWord(this.words, tap.command.type, { said: 1, accepted: entry.outcome.ok ? 1 : 0 });
    checkStepTaps(this.state, tap, entry, violations, counts);
    checkTapTimes({ state: this.state, tap, entry, truth, nowMs: time.nowMs, clockRightSinceMs: clockRightSinceMs(), violations, counts });
  }
}

function touchedBy(event: FloorEvent): readonly string[] {
  return event.type === 'commandUndone' ? event.workpieceIds : subjectsOf(event);
}
