import type { FloorCommand } from '../../shared/floor/commands.ts';
import { decide } from '../../shared/floor/decide.ts';
import type { Due } from '../../shared/floor/due.ts';
import { evolve } from '../../shared/floor/evolve.ts';
import type { Outcome, Refusal } from '../../shared/floor/refusals.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { canBeUndone } from '../../shared/floor/undo-memory.ts';
import { HOUSE_DEVICE_ID } from '../floor/house-device.ts';
import type { JournalEntry } from '../journal/journal.ts';
import type { Chance } from './chance.ts';
import { OpenDues } from './open-dues.ts';

/** Whose hand gave a command: a phone at a station, the wall, or the house itself. */
export interface Hand {
  readonly deviceId: string;
  readonly stationId: string | null;
}

export const THE_HOUSE: Hand = { deviceId: HOUSE_DEVICE_ID, stationId: null };

/** What became of a command; its id, so that it can be undone. */
export interface Given {
  readonly commandId: string;
  readonly refusal: Refusal | null;
}

/** A floor on which time goes by as it is told, with what its journal is to keep: the same decisions and folds as a server's. */
export class InventedFloor {
  #state: FloorState = EMPTY_STATE;
  #nowMs: number;
  readonly #dues = new OpenDues();
  #entries: JournalEntry[] = [];
  readonly #chance: Chance;

  constructor(nowMs: number, chance: Chance) {
    this.#nowMs = nowMs;
    this.#chance = chance;
  }

  get state(): FloorState {
    return this.#state;
  }

  get nowMs(): number {
    return this.#nowMs;
  }

  /** Where everything open stands, worked out once for each state. */
  get dues(): readonly Due[] {
    return this.#dues.of(this.#state);
  }

  /** Time never goes back. */
  passTo(atMs: number): void {
    this.#nowMs = Math.max(this.#nowMs, Math.ceil(atMs));
  }

  /** A command now; with `agoMs`, one that a phone had kept for so long because it had no link. */
  give(command: FloorCommand, { deviceId, stationId }: Hand, agoMs = 0): Given {
    const commandId = this.#chance.id();
    const nowMs = this.#nowMs;
    // What a desk adopts is given by the house in its name.
    const isTap = deviceId !== HOUSE_DEVICE_ID && command.type !== 'adoptProposal';
    const decision = decide(this.#state, command, { commandId, deviceId, stationId, nowMs, tapMs: nowMs - agoMs, tapUncertain: false });
    const events = decision.ok ? decision.value : [];
    events.forEach((event, ordinal) => {
      this.#state = evolve(this.#state, { sequence: this.#state.sequence + 1, commandId, ordinal, deviceId, event });
    });
    const outcome: Outcome = decision.ok
      ? { ok: true, sequence: this.#state.sequence, undoable: isTap && events.some(canBeUndone) }
      : { ok: false, refusal: decision.fault };
    // What the house itself had to say and no longer has is nobody's answer.
    if (isTap || decision.ok) this.#entries.push({ commandId, deviceId, receivedMs: nowMs, events, outcome });
    return { commandId, refusal: decision.ok ? null : decision.fault };
  }

  /** What has been given since it was last asked, for the journal. */
  takeEntries(): readonly JournalEntry[] {
    const entries = this.#entries;
    this.#entries = [];
    return entries;
  }
}
