import { calledStep, openDues, roleAt } from '../../../shared/floor/due.ts';
import type { MemoryDisk } from '../../../server/journal/memory-journal.ts';
import { forScreens } from '../../../shared/floor/for-screens.ts';
import { differenceOf } from './difference.ts';
import type { Ledger } from './ledger.ts';
import type { ServerRoom } from './server-room.ts';
import type { SimDevice } from './sim-device.ts';
import type { TapBook } from './tap-book.ts';
import type { Violations } from './violation.ts';
import type { WireWitness } from './wire-witness.ts';

/** Wall and phone tell the house's time within this. Real time. */
const CLOCKS_WITHIN_MS = 100;

export interface FinalChecksOptions {
  readonly disk: MemoryDisk;
  readonly room: ServerRoom;
  readonly ledger: Ledger;
  readonly wire: WireWitness;
  readonly taps: TapBook;
  readonly devices: readonly SimDevice[];
  readonly pace: number;
  readonly violations: Violations;
}

/** Everything is healed and flushed, and nothing is under way: what must be true of everybody. */
export function checkEnd({ disk, room, ledger, wire, taps, devices, pace, violations }: FinalChecksOptions): void {
  const server = room.serving;
  if (server === null) {
    violations.report('S4', 'no server is serving after all is healed');
    return;
  }
  const { state } = server.floor;
  const houseMs = server.clock.nowMs();
  const serverDifference = differenceOf(state, ledger.state);
  violations.demand('S1', serverDifference === null, () => `the server's state is not the fold of its journal: ${serverDifference ?? ''}`);
  for (const { name, client, storedTaps, isLive } of devices) {
    const { view } = client;
    violations.demand('S4', isLive, () => `${name} is ${view.connection.phase} after all is healed`);
    violations.demand(
      'S4',
      view.kept.length === 0 && storedTaps === 0,
      () => `${name} still keeps ${view.kept.length} taps, and ${storedTaps} in its storage`,
    );
    violations.demand('S4', view.sequence === state.sequence, () => `${name} holds ${view.sequence} events, the server ${state.sequence}`);
    const difference = differenceOf(view.state === null ? null : forScreens(view.state), forScreens(state));
    violations.demand('S4', difference === null, () => `${name} shows another state than the server's: ${difference ?? ''}`);
    const offMs = (client.nowMs() - houseMs) / pace;
    violations.demand('S10', Math.abs(offMs) <= CLOCKS_WITHIN_MS, () => `${name} is ${Math.round(offMs)} ms off the house's time`);
  }
  for (const { commandId, deviceId } of taps.all()) {
    violations.demand('S4', ledger.has(commandId), () => `the tap ${commandId} of ${deviceId} has no outcome`);
    const isTold = wire.isTold(commandId) || disk.events.some(({ recorded }) => recorded.commandId === commandId);
    violations.demand('S4', !ledger.has(commandId) || isTold, () => `nobody was ever told what became of ${commandId}`);
  }
  for (const due of openDues(state)) {
    const sinceMs = houseMs - 6_000 * pace;
    const role = roleAt(due, sinceMs);
    const { call, tag } = due.workpiece;
    violations.demand(
      'S5',
      role === 'running' || (call !== null && [calledStep(due, sinceMs).id, calledStep(due, houseMs).id].includes(call.stepId)),
      () => `${role} of ${tag} ${due.action.id} is true and not raised`,
    );
  }
}
