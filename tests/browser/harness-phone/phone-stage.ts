import type { FloorView } from '../../../display/link/floor-link.ts';
import { dueOf, roleAt, type Due } from '../../../shared/floor/due.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { IN_HEALTH } from '../../../display/link/floor-link.ts';
import { NOBODY_JOINS } from '../../../shared/wire/joining.ts';
import { assert } from '../../../shared/result.ts';
import type { Floor } from '../../domain/support/floor.ts';
import { OTHER_PHONE, PHONE } from '../../domain/support/ids.ts';

/** A floor at an instant, and the tag of the dough that the picture is about. */
export interface Scene {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly tag: string;
}

/** What a phone in good order is told of a state. */
export function phoneView(state: FloorState | null, more: Partial<FloorView> = {}): FloorView {
  const device = { id: PHONE, name: 'Bench phone', stationId: 'bench' };
  return {
    state,
    sequence: state?.sequence ?? 0,
    connection: { phase: 'live' },
    device,
    devices: [device, { id: OTHER_PHONE, name: 'Oven phone', stationId: 'oven' }],
    addresses: [],
    pace: 1,
    kept: [],
    lastAnswer: null,
    undoable: null,
    refusedHere: null,
    soundingDeviceId: OTHER_PHONE,
    soundingPage: 'wall',
    planNews: 0,
    joining: NOBODY_JOINS,
    health: IN_HEALTH,
    ...more,
  };
}

/** Lets hands do what is due, minute by minute, until a dough of the floor stands as wanted. */
export function untilSome(floor: Floor, wanted: (due: Due, nowMs: number) => boolean): Due {
  for (let minute = 0; minute < 12 * 60; minute += 1) {
    floor.wait(1);
    floor.raiseCalls();
    for (const workpiece of Object.values(floor.state.workpieces)) {
      const due = dueOf(floor.state, workpiece);
      if (due === null) continue;
      if (wanted(due, floor.nowMs)) return due;
      if (roleAt(due, floor.nowMs) === 'running' && due.phase !== 'working') continue;
      if (due.dueMs <= floor.nowMs)
        floor.give({ type: 'finishStep', workpieceId: workpiece.id, stepId: due.action.id }, { stationId: due.action.station ?? null });
    }
  }
  assert(false, 'the day went by and no dough stood as wanted');
}
