import { derivedId } from '../../ids.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { EventOf, FloorEvent, PlannedStep } from '../events.ts';
import { planPlacesOf } from '../planned-step.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { plannedEvents } from './plan-day.ts';
import { bookOfHouse } from './plan-batches.ts';

/** Ids that a command derives for what it makes are counted from 0; the plan's own is the last that there can be. */
const PLAN_ID_NUMBER = 0xffff;

/**
 * A day that was tried becomes the day: its batches and preps are planned, and every step has its time. What has begun
 * since it was tried stays where it is. A day that is over takes no plan.
 */
export function decideAdoptProposal(state: FloorState, command: CommandOf<'adoptProposal'>, context: CommandContext): Decision {
  const { serviceDate } = command;
  if (state.closedDates.includes(serviceDate)) return refused({ code: 'dayNotOpen', serviceDate });
  // As plannedEvents takes them, so that the n-th is the n-th there.
  const inOrder = [...command.batches].sort((a, b) => a.plannedStartMs - b.plannedStartMs);
  const planned = plannedEvents(state, { serviceDate, batches: inOrder }, context, bookOfHouse(state));
  if (!planned.ok) return planned;
  const opened: FloorEvent[] = state.openDates.includes(serviceDate) ? [] : [{ type: 'dayOpened', serviceDate }];
  const idOf = idsByKey(inOrder, planned.value, context);
  const starts = command.steps.flatMap(({ batchKey, ...step }): PlannedStep[] => {
    const workpieceId = idOf.get(batchKey) ?? (state.workpieces[batchKey] === undefined ? undefined : batchKey);
    return workpieceId === undefined || hasBegun(state, { ...step, workpieceId }) ? [] : [{ ...step, workpieceId }];
  });
  return accepted([
    ...opened,
    ...planned.value,
    {
      type: 'planAdopted',
      planId: derivedId(context.commandId, PLAN_ID_NUMBER),
      isWhole: true,
      starts,
      moved: [],
      warnings: command.warnings,
      atMs: context.nowMs,
    },
  ]);
}

/** The plan follows the floor. What has begun meanwhile is no longer moved; nothing is said where nothing moves. */
export function decideAdoptReplan(state: FloorState, command: CommandOf<'adoptReplan'>, context: CommandContext): Decision {
  if (state.plan === null) return refused({ code: 'nothingChanges' });
  const starts = command.starts.filter((start) => state.workpieces[start.workpieceId] !== undefined && !hasBegun(state, start));
  const isSaidAlready = JSON.stringify(command.warnings) === JSON.stringify(state.plan.warnings);
  if (starts.length === 0 && isSaidAlready) return refused({ code: 'nothingChanges' });
  const moved = command.moved.filter((move) => !hasBegun(state, move));
  return accepted([
    {
      type: 'planAdopted',
      planId: derivedId(context.commandId, PLAN_ID_NUMBER),
      isWhole: command.isWhole,
      starts,
      moved,
      warnings: command.warnings,
      atMs: context.nowMs,
    },
  ]);
}

function idsByKey(
  batches: CommandOf<'adoptProposal'>['batches'],
  events: readonly FloorEvent[],
  context: CommandContext,
): ReadonlyMap<string, string> {
  const planned = events.filter((event): event is EventOf<'workpiecePlanned'> => event.type === 'workpiecePlanned');
  const plannedIds = new Set(planned.map((event) => event.workpieceId));
  const ids = new Map<string, string>();
  batches.forEach(({ batchKey }, index) => {
    const id = derivedId(context.commandId, index);
    // A pot that stands already is fed again: it has no workpiece of this command.
    if (plannedIds.has(id)) ids.set(batchKey, id);
  });
  const keys = new Map([...ids].map(([key, id]) => [id, key]));
  for (const { serves, formulaId, workpieceId } of planned) {
    if (serves !== undefined) ids.set(`${formulaId}>${keys.get(serves.workpieceId) ?? serves.workpieceId}`, workpieceId);
  }
  return ids;
}

/** Whether a step has begun already on the workpiece or on what it was divided into. */
function hasBegun(state: FloorState, place: Pick<PlannedStep, 'workpieceId' | 'cut' | 'load' | 'stepId'>): boolean {
  const own = state.workpieces[place.workpieceId];
  if (own === undefined) return false;
  if (place.cut === undefined && place.load === undefined) return own.steps[place.stepId] !== undefined;
  return below(state, own.childIds).some(
    (child) =>
      child.steps[place.stepId] !== undefined &&
      planPlacesOf(state, child).some(
        ({ workpieceId, cut, load }) => workpieceId === place.workpieceId && cut === place.cut && load === place.load,
      ),
  );
}

function below(state: FloorState, childIds: readonly string[]): FloorState['workpieces'][string][] {
  return childIds.flatMap((id) => {
    const child = state.workpieces[id];
    return child === undefined ? [] : [child, ...below(state, child.childIds)];
  });
}
