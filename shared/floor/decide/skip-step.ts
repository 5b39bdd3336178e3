import { accepted } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import { startOfNext, stationFields } from './begin.ts';
import type { Decision } from './decision.ts';
import { divideEvents } from './divide.ts';
import { believedStep, standingOf } from './standing.ts';

/** A step is left out, with the reason. What stands after it follows as if it had been done. */
export function decideSkipStep(state: FloorState, command: CommandOf<'skipStep'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, way, due, atMs } = believed.value;
  const events: FloorEvent[] = [];
  const skipped = way.find((step) => step.id === command.stepId) ?? due.action;
  if (due.phase === 'resting' && skipped.id !== due.step.id) {
    events.push({ type: 'stepDone', workpieceId: workpiece.id, stepId: due.step.id, atMs, ...stationFields(context) });
  }
  // Whatever is in the oven is out once the taking out is skipped, or nothing else could ever have its slot.
  if (skipped.verb === 'takeOut' && workpiece.slotIds.length > 0) {
    events.push({ type: 'ovenUnloaded', workpieceId: workpiece.id, stepId: skipped.id, atMs, slotIds: [...workpiece.slotIds] });
  }
  events.push({ type: 'stepSkipped', workpieceId: workpiece.id, stepId: skipped.id, atMs, reason: command.reason });
  const next = way[way.findIndex((step) => step.id === skipped.id) + 1];
  if (next === undefined) {
    if (workpiece.productId === null && workpiece.cuts.length > 1) {
      const divided = divideEvents(state, workpiece, skipped, atMs, context, undefined);
      return divided.ok ? accepted([...events, ...divided.value]) : divided;
    }
    return accepted([...events, { type: 'workpieceFinished', workpieceId: workpiece.id, atMs }]);
  }
  const begun = startOfNext(state, workpiece, next, atMs, context);
  return begun.ok ? accepted([...events, ...begun.value]) : begun;
}

/** A workpiece is given up, with the reason. */
export function decideDiscard(state: FloorState, command: CommandOf<'discardWorkpiece'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, due, atMs } = standing.value;
  const events: FloorEvent[] = [];
  if (workpiece.slotIds.length > 0)
    events.push({ type: 'ovenUnloaded', workpieceId: workpiece.id, stepId: due.action.id, atMs, slotIds: [...workpiece.slotIds] });
  return accepted([...events, { type: 'workpieceDiscarded', workpieceId: workpiece.id, atMs, reason: command.reason }]);
}
