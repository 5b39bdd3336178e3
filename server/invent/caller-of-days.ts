import { callsToRaise, nextRoleChangeMs } from '../../shared/floor/calls.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { nextSound } from '../../shared/floor/sounding.ts';
import { houseHours } from '../floor/house-hours.ts';
import { THE_HOUSE, type Hand, type InventedFloor } from './invented-floor.ts';

/** What is told of each call that was raised. */
export type OnCall = (call: CommandOf<'raiseCall'>) => void;

/** Raises calls and has them sounded at the instants at which a running server would: from state and time alone. */
export class CallerOfDays {
  readonly #floor: InventedFloor;
  readonly #wall: Hand;
  readonly #onCall: OnCall;

  constructor(floor: InventedFloor, wall: Hand, onCall: OnCall) {
    this.#floor = floor;
    this.#wall = wall;
    this.#onCall = onCall;
  }

  /** Goes on to an instant, or only to the next one at which something calls or sounds; true once it is there. */
  passTo(toMs: number): boolean {
    const floor = this.#floor;
    this.#look();
    const hours = houseHours(floor.state.house?.document ?? null);
    const soundMs = nextSound(floor.state, floor.nowMs, hours)?.atMs ?? Number.POSITIVE_INFINITY;
    const changeMs = nextRoleChangeMs(floor.state, floor.nowMs, floor.dues) ?? Number.POSITIVE_INFINITY;
    const atMs = Math.min(soundMs, changeMs);
    if (atMs > toMs) {
      floor.passTo(toMs);
      return true;
    }
    floor.passTo(atMs);
    this.#look();
    const sound = nextSound(floor.state, floor.nowMs, hours);
    if (sound !== null && sound.atMs <= floor.nowMs)
      floor.give({ type: 'noteSounded', burst: sound.burst, calls: [...sound.calls] }, this.#wall);
    return false;
  }

  #look(): void {
    const floor = this.#floor;
    for (const command of callsToRaise(floor.state, floor.nowMs, floor.dues)) {
      if (floor.give(command, THE_HOUSE).refusal === null) this.#onCall(command);
    }
  }
}
