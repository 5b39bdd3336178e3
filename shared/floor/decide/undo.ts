import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { mixerHolder, slotHolders } from '../slots.ts';
import type { Edge, FloorState, UndoEntry, Workpiece } from '../state.ts';
import { freeVessels } from '../vessels.ts';
import type { Decision } from './decision.ts';

/**
 * Takes back the device's own last command, while nothing later rests on it: nobody else has changed what it touched,
 * what it made has had no step done and gave or took nothing, and the slots, mixer, bowl and vessels that it gave free
 * have not been taken since.
 */
export function decideUndo(state: FloorState, command: CommandOf<'undoCommand'>, context: CommandContext): Decision {
  const entry = state.undo[context.deviceId];
  if (entry === undefined || entry.commandId !== command.commandId) return refused({ code: 'nothingToUndo' });
  const touched = Object.entries(entry.before);
  for (const [workpieceId, before] of touched) {
    const present = state.workpieces[workpieceId];
    if (present === undefined) return refused({ code: 'nothingToUndo' });
    const isRestedOn = before === null ? isUsed(state, present, entry.commandId) : wasChangedSince(present, before, entry.commandId);
    if (isRestedOn) return refused({ code: 'workRestsOnIt', tag: present.tag });
    const inTheWay = before === null ? null : takenSince(state, before, entry.before);
    if (inTheWay !== null) return refused({ code: 'workRestsOnIt', tag: inTheWay.tag });
  }
  const short = vesselsTakenSince(state, entry, context.nowMs);
  if (short !== null) return refused({ code: 'workRestsOnIt', tag: short.tag });
  return accepted([
    {
      type: 'commandUndone',
      undoneCommandId: entry.commandId,
      workpieceIds: touched.map(([workpieceId]) => workpieceId),
      atMs: context.nowMs,
    },
  ]);
}

/** What a command made is used once a step of it is done, or something came into or out of it, by another command. */
function isUsed(state: FloorState, made: Workpiece, commandId: string): boolean {
  const isAnothers = (edge: Edge): boolean => edge.commandId !== commandId && (edge.fromId === made.id || edge.toId === made.id);
  const isDoneSince = made.lastDoneCommandId !== null && made.lastDoneCommandId !== commandId;
  return isDoneSince || state.edges.some(isAnothers);
}

function wasChangedSince(present: Workpiece, before: Workpiece, commandId: string): boolean {
  return present.lastCommandId !== commandId && present.lastCommandId !== before.lastCommandId;
}

function takenSince(state: FloorState, before: Workpiece, restored: Readonly<Record<string, Workpiece | null>>): Workpiece | null {
  const holders = slotHolders(state);
  const others = before.slotIds.map((slotId) => holders.get(slotId));
  if (before.mixerId !== null) others.push(mixerHolder(state, before.mixerId) ?? undefined);
  if (before.bowlId !== null) others.push(...Object.values(state.workpieces).filter((other) => other.bowlId === before.bowlId));
  return others.find((other) => other !== undefined && !(other.id in restored)) ?? null;
}

/** A workpiece that would hold vessels again which others have taken since: there would be more of them out than the house has. */
function vesselsTakenSince(state: FloorState, entry: UndoEntry, nowMs: number): Workpiece | null {
  const before = Object.values(entry.before).filter((workpiece) => workpiece !== null);
  const present = Object.keys(entry.before).flatMap((workpieceId) => state.workpieces[workpieceId] ?? []);
  const undone: FloorState = { ...state, vesselReturns: state.vesselReturns.filter((back) => back.commandId !== entry.commandId) };
  const isShort = (vesselId: string): boolean => {
    const free = freeVessels(undone, vesselId, nowMs) + heldOf(present, vesselId) - heldOf(before, vesselId);
    return free < 0 && free < freeVessels(state, vesselId, nowMs);
  };
  return before.find((workpiece) => workpiece.vessels.some((held) => isShort(held.vesselId))) ?? null;
}

function heldOf(workpieces: readonly Workpiece[], vesselId: string): number {
  return workpieces.reduce((sum, workpiece) => sum + (workpiece.vessels.find((held) => held.vesselId === vesselId)?.count ?? 0), 0);
}
