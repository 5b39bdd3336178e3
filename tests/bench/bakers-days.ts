import { callsToRaise, nextRoleChangeMs } from '../../shared/floor/calls.ts';
import type { CommandOf, FloorCommand } from '../../shared/floor/commands.ts';
import { decide } from '../../shared/floor/decide.ts';
import { openDues, type Due } from '../../shared/floor/due.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { evolve } from '../../shared/floor/evolve.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { nextSound } from '../../shared/floor/sounding.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { derivedId, idFromBytes } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';
import { HOUSE_DEVICE_ID } from '../../server/floor/house-device.ts';
import type { JournalEntry } from '../../server/journal/journal.ts';
import { commandOfFile } from '../../server/main/planned-starts.ts';
import type { ReadBakehouse } from '../../server/main/read-bakehouse.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
/** Who is refused (a mixer or the oven is busy) comes again after so long. */
const COME_AGAIN_MS = 4 * MINUTE_MS;

/**
 * Bakers who work through the demo day, day after day, by the commands that phones and the server give: they are called, hear a call
 * now and then, come a little late, give a little more, read a temperature, and are refused where the oven is full.
 */
export class BakersDays {
  state: FloorState = EMPTY_STATE;
  readonly #bakehouse: ReadBakehouse;
  readonly #keep: (entry: JournalEntry) => void;
  readonly #random: () => number;
  readonly #phones: readonly string[];
  readonly #comesMs = new Map<string, number>();
  #nowMs: number;
  #days = 0;

  /** `keep` gets each command as it goes into the journal, the first day's at `startMs`. `seed` sets how the bakers work. */
  constructor(bakehouse: ReadBakehouse, startMs: number, keep: (entry: JournalEntry) => void, seed = 1) {
    this.#bakehouse = bakehouse;
    this.#nowMs = startMs;
    this.#keep = keep;
    this.#random = splitmix(seed);
    this.#phones = [0, 1, 2].map(() => this.#newId());
    this.#house({ type: 'anchorClock', houseMs: startMs, realMs: startMs, pace: 1 });
  }

  /** One more day, from bringing it in until the next one. */
  workDay(): void {
    const endMs = this.#nowMs + DAY_MS;
    const command = commandOfFile(this.#bakehouse.file, this.#nowMs);
    const brought = this.#house(command);
    assert(brought.ok, `day ${this.#days} is brought in`);
    this.#days += 1;
    for (;;) {
      const next = this.#nextVisit();
      if (next === null || next.atMs >= endMs) break;
      this.#passTo(next.atMs);
      this.#visit(next.due);
    }
    this.#passTo(endMs);
  }

  /** When somebody next comes to a dough, and to which. */
  #nextVisit(): { readonly due: Due; readonly atMs: number } | null {
    let next: { due: Due; atMs: number } | null = null;
    for (const due of openDues(this.state)) {
      const key = `${due.workpiece.id} ${due.action.id} ${due.phase} ${due.workpiece.steps[due.step.id]?.moreMin ?? 0}`;
      let comesMs = this.#comesMs.get(key);
      if (comesMs === undefined) {
        // Mostly within two minutes, now and then after ten.
        comesMs = due.dueMs + (this.#random() < 0.1 ? 10 : 2) * MINUTE_MS * this.#random();
        this.#comesMs.set(key, comesMs);
      }
      const atMs = Math.max(this.#nowMs + 1, Math.round(comesMs));
      if (next === null || atMs < next.atMs) next = { due, atMs };
    }
    return next;
  }

  #visit(due: Due): void {
    const { workpiece, action, phase } = due;
    const onStep = { workpieceId: workpiece.id, stepId: action.id };
    const isCalling = workpiece.call !== null && workpiece.call.heardMs === null;
    if (isCalling && this.#random() < 0.3) this.#tap({ type: 'hearCall', ...onStep });
    if (phase === 'judging' && this.#random() < 0.2 && (workpiece.steps[due.step.id]?.moreMin ?? 0) < 3) {
      this.#tap({ type: 'giveMoreTime', ...onStep, minutes: 1 });
      return;
    }
    if (action.verb === 'turnOut' && this.#random() < 0.5) {
      this.#tap({ type: 'readTemperature', workpieceId: workpiece.id, where: 'dough', celsius: 24 + Math.round(this.#random() * 30) / 10 });
    }
    const isStarted = workpiece.steps[action.id]?.status === 'started';
    const starts = !isStarted && action.kind === 'hands' && this.#random() < 0.4;
    const outcome = this.#tap(starts ? { type: 'startStep', ...onStep } : { type: 'finishStep', ...onStep });
    if (outcome.ok) return;
    const key = `${workpiece.id} ${action.id} ${phase} ${workpiece.steps[due.step.id]?.moreMin ?? 0}`;
    this.#comesMs.set(key, this.#nowMs + COME_AGAIN_MS);
  }

  /** Time passes: what falls due is called and sounded, as the server would. */
  #passTo(toMs: number): void {
    for (;;) {
      const soundMs = nextSound(this.state, this.#nowMs)?.atMs ?? Infinity;
      const changeMs = nextRoleChangeMs(this.state, this.#nowMs) ?? Infinity;
      const atMs = Math.min(soundMs, changeMs);
      if (atMs > toMs) break;
      this.#nowMs = Math.max(this.#nowMs, Math.ceil(atMs));
      for (const command of callsToRaise(this.state, this.#nowMs)) this.#house(command);
      const sound = nextSound(this.state, this.#nowMs);
      if (sound !== null && sound.atMs <= this.#nowMs) this.#house({ type: 'noteSounded', burst: sound.burst, calls: [...sound.calls] });
    }
    this.#nowMs = Math.max(this.#nowMs, toMs);
  }

  #tap(command: Exclude<FloorCommand, CommandOf<'bringInDay'>>): Outcome {
    const phone = this.#phones[Math.floor(this.#random() * this.#phones.length)];
    assert(phone !== undefined, 'there are phones');
    return this.#give(command, phone);
  }

  #house(command: FloorCommand): Outcome {
    return this.#give(command, HOUSE_DEVICE_ID);
  }

  #give(command: FloorCommand, deviceId: string): Outcome {
    const commandId = this.#newId();
    const isTap = deviceId !== HOUSE_DEVICE_ID;
    const context = { commandId, deviceId, stationId: isTap ? 'bench' : null, nowMs: this.#nowMs, tapMs: this.#nowMs, tapUncertain: false };
    const decision = decide(this.state, command, context);
    const events = decision.ok ? decision.value : [];
    const outcome: Outcome = decision.ok
      ? { ok: true, sequence: this.state.sequence + events.length, undoable: isTap && command.type !== 'undoCommand' }
      : { ok: false, refusal: decision.fault };
    events.forEach((event, ordinal) => {
      const recorded: RecordedEvent = { sequence: this.state.sequence + 1, commandId, ordinal, deviceId, event };
      this.state = evolve(this.state, recorded);
    });
    if (isTap || decision.ok) this.#keep({ commandId, deviceId, receivedMs: this.#nowMs, events, outcome });
    return outcome;
  }

  #newId(): string {
    const bytes = new Uint8Array(16).map(() => Math.floor(this.#random() * 256));
    return derivedId(idFromBytes(bytes), 0);
  }
}

/** splitmix32 (a 32-bit form of Steele, Lea, Flood: Fast splittable pseudorandom number generators, 2014; constants from memory): 0 to 1. */
function splitmix(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    mixed ^= mixed >>> 15;
    return (mixed >>> 0) / 4_294_967_296;
  };
}
