import type { BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { FloorView } from '../../../display/link/floor-link.ts';
import { openDues } from '../../../shared/floor/due.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { IN_HEALTH } from '../../../display/link/floor-link.ts';
import { NOBODY_JOINS } from '../../../shared/wire/joining.ts';
import { Floor } from '../../domain/support/floor.ts';
import { bringInCommand, harbourFile, OPENING_MS } from '../../domain/support/harbour.ts';
import { PHONE, SERVER_DEVICE } from '../../domain/support/ids.ts';

const MINUTE_MS = 60_000;

/** A day with so many batches of the demo house's formulas, begun a few minutes apart. */
export function dayOf(batches: number, apartMin: number): BakehouseFile {
  const file = harbourFile();
  const models = file.day.batches;
  return {
    ...file,
    day: {
      ...file.day,
      batches: Array.from({ length: batches }, (_, index) => {
        const model = models[index % models.length];
        if (model === undefined) throw new Error('the demo day has no batches');
        return { ...model, start: { afterLoadMin: index * apartMin } };
      }),
    },
  };
}

/** How hands behave on the staged day. */
export interface Hands {
  /** Stop everything so many minutes after the day began. */
  readonly untilMin: number;
  /** Tags that nobody looks after, from so many minutes after the beginning. */
  readonly neglected?: Readonly<Record<string, number>>;
}

/** A floor on which hands did what was due, minute by minute, but for what they neglected. */
export function workedFloor(file: BakehouseFile, hands: Hands): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(file, OPENING_MS), { deviceId: SERVER_DEVICE });
  // The day's sound test was heard: a house in good order.
  for (const type of ['askSoundTest', 'noteSoundTestSounded'] as const) floor.ok({ type });
  floor.ok({ type: 'answerSoundTest', heard: true });
  for (let minute = 0; minute < hands.untilMin; minute += 1) {
    floor.until(OPENING_MS + minute * MINUTE_MS);
    for (const due of openDues(floor.state)) {
      const neglectedFrom = hands.neglected?.[due.workpiece.tag];
      if (due.dueMs > floor.nowMs || (neglectedFrom !== undefined && minute >= neglectedFrom)) continue;
      const onStep = { workpieceId: due.workpiece.id, stepId: due.action.id };
      const isBegun = due.startedMs !== null && due.phase !== 'resting';
      const wantsStart = !isBegun && due.action.minutes.target >= 3 && due.action.verb !== 'load';
      floor.give(wantsStart ? { type: 'startStep', ...onStep } : { type: 'finishStep', ...onStep }, {
        stationId: due.action.station ?? null,
      });
    }
    floor.raiseCalls();
  }
  floor.until(OPENING_MS + hands.untilMin * MINUTE_MS + 12_000);
  floor.raiseCalls();
  return floor;
}

/** The view that a link in good order would give of a state. */
export function viewOf(state: FloorState | null, more: Partial<FloorView> = {}): FloorView {
  const device = { id: PHONE, name: 'Wall', stationId: null };
  return {
    state,
    sequence: state?.sequence ?? 0,
    connection: { phase: 'live' },
    device,
    devices: [device],
    addresses: ['http://192.168.1.20:4810/phone'],
    pace: 1,
    kept: [],
    refusedHere: null,
    lastAnswer: null,
    undoable: null,
    soundingDeviceId: PHONE,
    soundingPage: 'wall',
    planNews: 0,
    joining: NOBODY_JOINS,
    health: IN_HEALTH,
    ...more,
  };
}
