import type { ClockAnchor } from '../../shared/floor/state.ts';
import type { RealTime } from './real-time.ts';

/** House time: real time, or at a demo's pace. The only time that the floor knows. */
export class HouseClock {
  readonly #real: RealTime;
  #anchor: ClockAnchor;

  constructor(real: RealTime, anchor: ClockAnchor) {
    this.#real = real;
    this.#anchor = anchor;
  }

  get anchor(): ClockAnchor {
    return this.#anchor;
  }

  get pace(): number {
    return this.#anchor.pace;
  }

  /** House time now, in whole milliseconds. */
  nowMs(): number {
    return Math.round(houseMs(this.#anchor, this.#real.nowMs()));
  }

  /** Real time now, in whole milliseconds: it is kept in columns and messages that know no parts of them. */
  realMs(): number {
    return Math.round(this.#real.nowMs());
  }

  /** For how long ago something was, in real milliseconds: no jump of the clock and no sleep of the machine counts as time that went by. */
  monotonicMs(): number {
    return this.#real.monotonicMs();
  }

  /** How many real milliseconds there are from now to an instant of the house; 0 where it is past. */
  realUntilMs(instantMs: number): number {
    return Math.max(0, (instantMs - this.nowMs()) / this.#anchor.pace);
  }

  setAnchor(anchor: ClockAnchor): void {
    this.#anchor = anchor;
  }
}

/** House time = houseMs + pace · (real − realMs). */
export function houseMs(anchor: ClockAnchor, realMs: number): number {
  return anchor.houseMs + anchor.pace * (realMs - anchor.realMs);
}

/**
 * The anchor to go on with after a start: the journal's own as long as the pace is the same, so that time went on while
 * the server was away; from where that one would be now where the pace is another. A house that never had a pace keeps
 * to real time.
 */
export function anchorForStart(kept: ClockAnchor | null, pace: number, realMs: number): ClockAnchor {
  if (kept === null) return { houseMs: Math.round(realMs), realMs: Math.round(realMs), pace };
  if (kept.pace === pace) return kept;
  return { houseMs: Math.round(houseMs(kept, realMs)), realMs: Math.round(realMs), pace };
}
