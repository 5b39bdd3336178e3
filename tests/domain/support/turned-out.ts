import { dueOf, type Due } from '../../../shared/floor/due.ts';
import { Floor } from './floor.ts';
import { OPENING_MS, SERVICE_DATE } from './harbour.ts';

/** Minutes that turning out took, about ten, where the formula says three. */
export const TWELVE = [9, 10, 10, 11, 12, 9, 10, 11, 10, 10, 9, 12];

/**
 * Country doughs of one day after the other. The turning out of each calls, is begun two minutes later, and done so many minutes after that;
 * or it is only done then, and nobody has said that it was begun.
 */
export function turnedOut(minutes: readonly number[], isBegun = true): Floor {
  const floor = Floor.harbour().only();
  minutes.forEach((taken, index) => {
    floor.until(OPENING_MS + (index + 1) * 86_400_000);
    const batch = {
      formulaId: 'country',
      plannedStartMs: floor.nowMs,
      grams: 9200,
      cuts: [{ productId: 'country-loaf', pieces: 10, grams: 9000 }],
    };
    floor.ok({ type: 'planBatches', serviceDate: SERVICE_DATE, batches: [batch] });
    const id = Object.values(floor.state.workpieces).find(({ finishedMs }) => finishedMs === null)?.id ?? '';
    for (let due = dueNow(floor, id); due.step.id !== 'turn-out'; due = dueNow(floor, id)) {
      floor.until(Math.max(floor.nowMs, due.dueMs));
      floor.ok({ type: 'finishStep', workpieceId: id, stepId: due.action.id });
    }
    floor.wait(2).raiseCalls();
    const turningOut = { workpieceId: id, stepId: 'turn-out' };
    const at = { stationId: index % 2 === 0 ? 'bench' : 'mixers' };
    if (isBegun) floor.ok({ type: 'startStep', ...turningOut }, at);
    floor.wait(taken).ok({ type: 'finishStep', ...turningOut }, at);
    floor.ok({ type: 'discardWorkpiece', workpieceId: id, reason: 'enough for the test' });
  });
  return floor;
}

function dueNow(floor: Floor, id: string): Due {
  const workpiece = floor.state.workpieces[id];
  const due = workpiece === undefined ? null : dueOf(floor.state, workpiece);
  if (due === null) throw new Error('it is off the floor');
  return due;
}
