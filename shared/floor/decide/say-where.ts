import type { Step } from '../../documents/method.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { Despite, FloorEvent } from '../events.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { startOf } from './begin.ts';
import type { Decision } from './decision.ts';
import { finishEvents } from './finish-step.ts';
import { standingOf, type Standing } from './standing.ts';
import { after } from './tentative.ts';

/** What was not tapped is not asked for again: whatever was short, the dough has gone on. */
const DESPITE_ALL: readonly Despite[] = ['changeOver', 'lastOfFerment', 'vesselsShort', 'withoutSource', 'notCooled'];

/**
 * Where a dough really is. Ahead: the steps before are closed as inferred, with all that follows from each, so that one
 * tap makes good the forgotten ones. Back: the steps from there on are not done, where nothing has come of them that
 * cannot be taken back.
 */
export function decideSayWhere(state: FloorState, command: CommandOf<'sayWhere'>, context: CommandContext): Decision {
  const asOf = { ...context, tapMs: context.tapMs - (command.sinceMin ?? 0) * 60_000 };
  const standing = standingOf(state, command.workpieceId, asOf);
  if (!standing.ok) return standing;
  const { workpiece, way, index, due } = standing.value;
  const target = way.findIndex((step) => step.id === command.stepId);
  const at = { tag: workpiece.tag, stepId: command.stepId };
  if (target === -1) return refused({ code: 'stepUnknown', ...at });
  if (target < index) return goBack(workpiece, way, target, index, standing.value);
  if (target === index && due.startedMs !== null) return refused({ code: 'nothingChanges', ...at });
  return goAhead(state, command, way, target, asOf);
}

function goAhead(
  state: FloorState,
  command: CommandOf<'sayWhere'>,
  way: readonly Step[],
  target: number,
  context: CommandContext,
): Decision {
  const events: FloorEvent[] = [];
  for (let round = 0; round <= way.length; round += 1) {
    const now = after(state, events, context);
    const workpiece = now.workpieces[command.workpieceId];
    // It has gone on in loads: each has its own way from here.
    if (workpiece === undefined || workpiece.finishedMs !== null) return accepted(events);
    const standing = standingOf(now, command.workpieceId, context);
    if (!standing.ok) return standing;
    const { due, index, atMs } = standing.value;
    if (index >= target && due.startedMs !== null) return accepted(events);
    const isWork = due.action.id === command.stepId;
    if (!isWork) {
      const finish = {
        type: 'finishStep' as const,
        workpieceId: workpiece.id,
        stepId: due.action.id,
        despite: [...DESPITE_ALL],
      };
      const finished = finishEvents(now, finish, standing.value, context, true);
      if (!finished.ok) return finished;
      events.push(...finished.value);
      continue;
    }
    if (due.phase === 'resting' && due.step.id !== due.action.id)
      events.push({ type: 'stepDone', workpieceId: workpiece.id, stepId: due.step.id, atMs, inferred: true });
    const begun = startOf(after(state, events, context), workpiece, due.action, atMs, context, { despite: DESPITE_ALL });
    return begun.ok ? accepted([...events, ...begun.value]) : begun;
  }
  return accepted(events);
}

/** Work that has left its mark elsewhere (in a slot, a vessel, another dough, on the scales) is corrected there, not undone here. */
const LASTING: ReadonlySet<Step['verb']> = new Set(['load', 'takeOut', 'divide', 'feed']);

function goBack(workpiece: Workpiece, way: readonly Step[], target: number, index: number, { atMs }: Standing): Decision {
  const reopened = way.slice(target, index + 1).filter((step) => workpiece.steps[step.id] !== undefined);
  const over = reopened.filter((step) => workpiece.steps[step.id]?.status !== 'started');
  const first = way[target];
  const isLasting = over.some((step) => LASTING.has(step.verb) || step.additions.length > 0 || claims(step, 'vessel'));
  const lacksMixer = first !== undefined && claims(first, 'mixer') && workpiece.mixerId === null;
  if (first === undefined || isLasting || lacksMixer)
    return refused({ code: 'workRestsOnIt', tag: workpiece.tag, ...(first === undefined ? {} : { stepId: first.id }) });
  const events: FloorEvent[] = [{ type: 'stepsReopened', workpieceId: workpiece.id, stepIds: reopened.map((step) => step.id), atMs }];
  if (first.place !== undefined && first.place !== workpiece.placeId)
    events.push({ type: 'workpieceMoved', workpieceId: workpiece.id, placeId: first.place, atMs });
  return accepted(events);
}

function claims(step: Step, kind: Step['claims'][number]['kind']): boolean {
  return step.claims.some((claim) => claim.kind === kind);
}
