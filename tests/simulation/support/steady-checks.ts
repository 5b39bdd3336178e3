import { calledStep, openDues, roleAt } from '../../../shared/floor/due.ts';
import { isStronger } from '../../../shared/floor/role.ts';
import { nextSound } from '../../../shared/floor/sounding.ts';
import { SILENCE_MS } from '../../../shared/wire/protocol.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Counts } from './counts.ts';
import { differenceOf } from './difference.ts';
import { CLOCK_SLACK_MS, type HouseTruth } from './house-truth.ts';
import type { Ledger } from './ledger.ts';
import type { Network } from './network.ts';
import type { ServerRoom } from './server-room.ts';
import type { SimDevice } from './sim-device.ts';
import type { Violations } from './violation.ts';
import type { VirtualTime } from './virtual-time.ts';

/** With nothing wrong, a call is raised within so long of its instant. Real time. */
const RAISED_WITHIN_MS = 6_000;
/** With nothing wrong, a burst that is due is sounded within so long. Real time. */
const SOUNDED_WITHIN_MS = 25_000;

/** With nothing wrong, a page tells the house's time within so much, so long after anything was. Real time. */
const CLOCK_WITHIN_MS = 300;
const CLOCK_RIGHT_AFTER_MS = 7_000;

/** Looks from one comparison of the whole state to the next: it is large. */
const WHOLE_STATE_EVERY = 6;

export interface SteadyChecksOptions {
  readonly time: VirtualTime;
  readonly room: ServerRoom;
  readonly ledger: Ledger;
  readonly truth: HouseTruth;
  readonly devices: readonly SimDevice[];
  readonly network: Network;
  readonly violations: Violations;
  readonly counts: Counts;
}

/** What must hold whenever one looks, and what must have happened where nothing has been wrong for a while. */
export class SteadyChecks {
  readonly #options: SteadyChecksOptions;
  #looks = 0;
  /** Bursts that are overdue, and since when they have been seen to be. */
  #overdue = new Map<string, number>();

  constructor(options: SteadyChecksOptions) {
    this.#options = options;
  }

  look(): void {
    const { room, time, ledger, truth, violations, counts } = this.#options;
    const server = room.serving;
    if (server === null || !server.host.isAwake) return;
    const { state } = server.floor;
    this.#looks += 1;
    if (state.sequence === ledger.sequence && this.#looks % WHOLE_STATE_EVERY === 0) {
      counts.stateChecks += 1;
      const difference = differenceOf(state, ledger.state);
      violations.demand('S1', difference === null, () => `the server's state is not the fold of its journal: ${difference ?? ''}`);
    }
    const [complaint] = ledger.complaints();
    violations.demand('S11', complaint === undefined, () => `the floor does not hold together: ${complaint ?? ''}`);
    if (time.nowMs < room.clockRightSinceMs) return;
    const houseMs = server.clock.nowMs();
    const offMs = houseMs - truth.at(time.nowMs);
    // A jump that is on the disk and not yet back from there is followed when it is.
    const isLevel = truth.isAnchored && state.sequence === ledger.sequence;
    violations.demand(
      'S5',
      !isLevel || Math.abs(offMs) <= (CLOCK_SLACK_MS + 1) * truth.pace,
      () => `the house's clock is ${Math.round(offMs)} ms off`,
    );
    this.#checkCalls(state, houseMs);
    this.#checkSounds(state, houseMs);
    this.#checkClocks(houseMs);
  }

  #checkClocks(houseMs: number): void {
    const { room, time, devices, network, truth, violations, counts } = this.#options;
    // Where messages are held up, so are the answers by which a page learns the time.
    if (network.holdUps > 0 || time.nowMs - room.steadySinceMs < CLOCK_RIGHT_AFTER_MS) return;
    for (const { name, client, isLive, steadySinceMs } of devices) {
      // A line that broke without a word, or went with the server's last life, is noticed by the silence.
      const lineSinceMs = Math.max(steadySinceMs, room.servingSinceMs);
      if (!isLive || time.nowMs - lineSinceMs < SILENCE_MS + CLOCK_RIGHT_AFTER_MS) continue;
      counts.pageClocks += 1;
      const offMs = (client.nowMs() - houseMs) / truth.pace;
      violations.demand(
        'S10',
        Math.abs(offMs) <= CLOCK_WITHIN_MS,
        () => `${name} has been ${Math.round(offMs)} ms off the house's time, with nothing wrong for ${CLOCK_RIGHT_AFTER_MS} ms`,
      );
    }
  }

  #checkCalls(state: FloorState, houseMs: number): void {
    const { room, time, truth, ledger, violations, counts } = this.#options;
    if (time.nowMs - room.steadySinceMs < RAISED_WITHIN_MS) return;
    const sinceMs = houseMs - RAISED_WITHIN_MS * truth.pace;
    for (const due of openDues(state)) {
      const { workpiece } = due;
      if (time.nowMs - ledger.touchedMs(workpiece.id) < RAISED_WITHIN_MS) continue;
      const level = roleAt(due, sinceMs);
      if (level === 'running') continue;
      counts.liveCalls += 1;
      const { call } = workpiece;
      // A bake that has ended meanwhile calls for its end, and no more for what a phase of it asked.
      const steps = [calledStep(due, sinceMs).id, calledStep(due, houseMs).id];
      const isRaised = call !== null && steps.includes(call.stepId) && !isStronger(level, call.level);
      violations.demand(
        'S5',
        isRaised,
        () => `${level} of ${workpiece.tag} ${steps.join(' or ')} has been true for ${RAISED_WITHIN_MS} ms and is not raised`,
      );
    }
  }

  #checkSounds(state: FloorState, houseMs: number): void {
    const { room, time, devices, violations, counts } = this.#options;
    const outlets = devices.filter((device) => device.sound === 'on' && device.isLive);
    const isSteady =
      outlets.length > 0 &&
      devices.every(
        (device) =>
          device.sound !== 'on' || (device.isLive && device.failsToSound === 0 && time.nowMs - device.steadySinceMs >= SOUNDED_WITHIN_MS),
      );
    const next = nextSound(state, 0);
    const seen = new Map<string, number>();
    if (isSteady && time.nowMs - room.steadySinceMs >= SOUNDED_WITHIN_MS && next !== null && next.atMs < houseMs) {
      for (const { workpieceId, stepId, level } of next.calls) {
        const key = [workpieceId, stepId, level, state.workpieces[workpieceId]?.call?.soundedCount, next.atMs].join(' ');
        seen.set(key, this.#overdue.get(key) ?? time.nowMs);
        counts.liveSounds += 1;
      }
    }
    for (const [key, sinceMs] of seen) {
      violations.demand(
        'S6',
        time.nowMs - sinceMs < SOUNDED_WITHIN_MS,
        () => `${key} has been due to sound for ${time.nowMs - sinceMs} ms, with a device that can`,
      );
    }
    this.#overdue = seen;
  }
}
