import { decide } from '../../../shared/floor/decide.ts';
import type { Decision } from '../../../shared/floor/decide/decision.ts';
import type { CommandContext, FloorCommand } from '../../../shared/floor/commands.ts';
import { callsToRaise } from '../../../shared/floor/calls.ts';
import { dueOf, type Due } from '../../../shared/floor/due.ts';
import type { FloorEvent, RecordedEvent } from '../../../shared/floor/events.ts';
import { evolve } from '../../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState, type Workpiece } from '../../../shared/floor/state.ts';
import { assert } from '../../../shared/result.ts';
import { bringInCommand, harbourFile, OPENING_MS } from './harbour.ts';
import { idOf, PHONE, SERVER_DEVICE } from './ids.ts';

const MINUTE_MS = 60_000;

/** What a test may say beside the command. */
export interface Tap {
  readonly deviceId?: string;
  readonly stationId?: string | null;
  readonly tapMs?: number;
  readonly tapUncertain?: boolean;
  readonly commandId?: string;
}

/** A command that was given, with what became of it. */
export interface Given {
  readonly commandId: string;
  readonly decision: Decision;
}

/**
 * A floor without a server: decides and folds commands one after another, with a clock that only moves when told to.
 * It keeps the events that it recorded, so that a test can fold them again.
 */
export class Floor {
  state: FloorState;
  nowMs: number;
  readonly recorded: RecordedEvent[] = [];
  private given = 0;

  constructor(state: FloorState = EMPTY_STATE, nowMs: number = OPENING_MS) {
    this.state = state;
    this.nowMs = nowMs;
  }

  /** The demo day, brought in at 03:00. */
  static harbour(): Floor {
    const floor = new Floor();
    floor.ok(bringInCommand(harbourFile(), floor.nowMs), { deviceId: SERVER_DEVICE });
    return floor;
  }

  /** Decides a command now, and folds its events where it is accepted. */
  give(command: FloorCommand, tap: Tap = {}): Given {
    this.given += 1;
    const commandId = tap.commandId ?? idOf(this.given);
    const context: CommandContext = {
      commandId,
      deviceId: tap.deviceId ?? PHONE,
      stationId: tap.stationId ?? null,
      nowMs: this.nowMs,
      tapMs: tap.tapMs ?? this.nowMs,
      tapUncertain: tap.tapUncertain ?? false,
    };
    const decision = decide(this.state, command, context);
    if (decision.ok) decision.value.forEach((event, ordinal) => this.record(event, commandId, ordinal, context.deviceId));
    return { commandId, decision };
  }

  /** Gives a command that must be accepted. Returns its id. */
  ok(command: FloorCommand, tap: Tap = {}): string {
    const { commandId, decision } = this.give(command, tap);
    assert(decision.ok, decision.ok ? '' : `${command.type} was refused: ${JSON.stringify(decision.fault)}`);
    return commandId;
  }

  /** Folds an event that no decider makes yet. */
  record(event: FloorEvent, commandId: string = idOf(900_000 + this.state.sequence), ordinal = 0, deviceId: string = PHONE): void {
    const recorded: RecordedEvent = { sequence: this.state.sequence + 1, commandId, ordinal, deviceId, event };
    this.recorded.push(recorded);
    this.state = evolve(this.state, recorded);
  }

  /** Lets time pass. */
  wait(minutes: number): this {
    this.nowMs += Math.round(minutes * MINUTE_MS);
    return this;
  }

  /** Lets time pass until an instant, which may not be behind. */
  until(atMs: number): this {
    assert(atMs >= this.nowMs, 'time does not run backwards');
    this.nowMs = atMs;
    return this;
  }

  /** The workpiece with a tag. Throws where there is none, or several. */
  piece(tag: string): Workpiece {
    const found = Object.values(this.state.workpieces).filter((workpiece) => workpiece.tag === tag);
    assert(found.length === 1 && found[0] !== undefined, `${found.length} workpieces are called ${tag}`);
    return found[0];
  }

  id(tag: string): string {
    return this.piece(tag).id;
  }

  due(tag: string): Due {
    const due = dueOf(this.state, this.piece(tag));
    assert(due !== null, `${tag} is off the floor`);
    return due;
  }

  /** Says a step is done. Without a step, the one that the call is for. */
  finish(tag: string, stepId = this.due(tag).action.id, tap: Tap = {}): string {
    return this.ok({ type: 'finishStep', workpieceId: this.id(tag), stepId }, tap);
  }

  /** Finishes steps, each when it is due, until the one named stands first, or is called at the end of a rest. */
  bringTo(tag: string, stepId: string): this {
    for (;;) {
      const { step, action, dueMs } = this.due(tag);
      if (step.id === stepId) return this;
      if (action.id === stepId) return this.until(Math.max(dueMs, this.nowMs));
      this.finishWhenDue(tag);
    }
  }

  /** Waits until the workpiece wants hands, and gives them. */
  finishWhenDue(tag: string): string {
    const { dueMs } = this.due(tag);
    if (dueMs > this.nowMs) this.until(dueMs);
    return this.finish(tag);
  }

  /** What the server does when time has passed: raises every call that is true now. Returns them as `tag step level`. */
  raiseCalls(): readonly string[] {
    const commands = callsToRaise(this.state, this.nowMs);
    for (const command of commands) this.ok(command, { deviceId: SERVER_DEVICE });
    return commands.map((command) => `${this.state.workpieces[command.workpieceId]?.tag ?? '?'} ${command.stepId} ${command.level}`);
  }

  /** Takes all workpieces but these off the floor, so that nothing else calls. */
  only(...tags: readonly string[]): this {
    for (const workpiece of Object.values(this.state.workpieces)) {
      if (!tags.includes(workpiece.tag))
        this.ok({ type: 'discardWorkpiece', workpieceId: workpiece.id, reason: 'not today' }, { deviceId: SERVER_DEVICE });
    }
    return this;
  }
}
