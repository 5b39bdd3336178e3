import type { Step } from '../../documents/method.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import { startOfNext, stationFields } from './begin.ts';
import type { Decision } from './decision.ts';
import { divideEvents } from './divide.ts';
import { fedJustNow } from './feed.ts';
import { believedStep, standingOf } from './standing.ts';
import { after } from './tentative.ts';
import { giveBackAfter, giveBackAll } from './vessels.ts';

/** A step is left out, with the reason. What stands after it follows as if it had been done. */
export function decideSkipStep(state: FloorState, command: CommandOf<'skipStep'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, way, due, atMs } = believed.value;
  const again = fedJustNow(state, workpiece, due.action, atMs);
  if (again !== null && command.stepId === due.action.id) return refused(again);
  // A pot ripens until it is fed: leaving the ripening itself out would take it off the floor with all that is in it.
  if (workpiece.stock !== null && command.stepId !== due.action.id)
    return refused({ code: 'stepNotReached', tag: workpiece.tag, stepId: command.stepId, currentStepId: due.action.id });
  const events: FloorEvent[] = [];
  const first = way.findIndex((step) => step.id === command.stepId);
  const skipped = skippedWith(way, first === -1 ? way.indexOf(due.action) : first);
  if (due.phase === 'resting' && !skipped.includes(due.step)) {
    events.push({ type: 'stepDone', workpieceId: workpiece.id, stepId: due.step.id, atMs, ...stationFields(context) });
  }
  for (const step of skipped) {
    // Whatever is in the oven is out once the taking out is skipped, or nothing else could ever have its slot.
    if (step.verb === 'takeOut' && workpiece.slotIds.length > 0) {
      events.push({ type: 'ovenUnloaded', workpieceId: workpiece.id, stepId: step.id, atMs, slotIds: [...workpiece.slotIds] });
    }
    events.push({ type: 'stepSkipped', workpieceId: workpiece.id, stepId: step.id, atMs, reason: command.reason });
  }
  const last = skipped.at(-1) ?? due.action;
  const next = way[way.findIndex((step) => step.id === last.id) + 1];
  const now = after(state, events, context);
  const then = now.workpieces[workpiece.id] ?? workpiece;
  if (next === undefined) {
    events.push(...giveBackAll(now, then, atMs));
    if (workpiece.productId === null && workpiece.cuts.length > 1) {
      const divided = divideEvents(now, then, last, atMs, context, undefined);
      return divided.ok ? accepted([...events, ...divided.value]) : divided;
    }
    return accepted([...events, { type: 'workpieceFinished', workpieceId: workpiece.id, atMs }]);
  }
  events.push(...giveBackAfter(now, then, last, atMs));
  const begun = startOfNext(after(state, events, context), then, next, atMs, context);
  return begun.ok ? accepted([...events, ...begun.value]) : begun;
}

/** What is not loaded is not baked and not taken out: a bake that is in no slot would hide from everybody who waits for one. */
function skippedWith(way: readonly Step[], from: number): readonly Step[] {
  const [step] = way.slice(from, from + 1);
  if (step === undefined) return [];
  if (step.verb !== 'load') return [step];
  const out = way.findIndex((later, index) => index > from && later.verb === 'takeOut');
  return out === -1 ? [step] : way.slice(from, out + 1);
}

/** A workpiece is given up, with the reason. */
export function decideDiscard(state: FloorState, command: CommandOf<'discardWorkpiece'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, due, atMs } = standing.value;
  const events: FloorEvent[] = [];
  if (workpiece.slotIds.length > 0)
    events.push({ type: 'ovenUnloaded', workpieceId: workpiece.id, stepId: due.action.id, atMs, slotIds: [...workpiece.slotIds] });
  events.push(...giveBackAll(state, workpiece, atMs));
  return accepted([...events, { type: 'workpieceDiscarded', workpieceId: workpiece.id, atMs, reason: command.reason }]);
}
