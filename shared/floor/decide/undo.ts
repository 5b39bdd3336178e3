import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { mixerHolder, slotHolders } from '../slots.ts';
import type { FloorState, Workpiece } from '../state.ts';
import type { Decision } from './decision.ts';

/**
 * Takes back the device's own last command, while nothing later rests on it: nobody else has changed what it touched,
 * what it made has had no step done, and the slots and the mixer that it gave free have not been taken since.
 */
export function decideUndo(state: FloorState, command: CommandOf<'undoCommand'>, context: CommandContext): Decision {
  const entry = state.undo[context.deviceId];
  if (entry === undefined || entry.commandId !== command.commandId) return refused({ code: 'nothingToUndo' });
  const touched = Object.entries(entry.before);
  for (const [workpieceId, before] of touched) {
    const present = state.workpieces[workpieceId];
    if (present === undefined) return refused({ code: 'nothingToUndo' });
    if (before === null ? present.lastDoneCommandId !== null : wasChangedSince(present, before, entry.commandId)) {
      return refused({ code: 'workRestsOnIt', tag: present.tag });
    }
    const inTheWay = before === null ? null : takenSince(state, before, entry.before);
    if (inTheWay !== null) return refused({ code: 'workRestsOnIt', tag: inTheWay.tag });
  }
  return accepted([
    {
      type: 'commandUndone',
      undoneCommandId: entry.commandId,
      workpieceIds: touched.map(([workpieceId]) => workpieceId),
      atMs: context.nowMs,
    },
  ]);
}

function wasChangedSince(present: Workpiece, before: Workpiece, commandId: string): boolean {
  return present.lastCommandId !== commandId && present.lastCommandId !== before.lastCommandId;
}

function takenSince(state: FloorState, before: Workpiece, restored: Readonly<Record<string, Workpiece | null>>): Workpiece | null {
  const holders = slotHolders(state);
  const others = before.slotIds.map((slotId) => holders.get(slotId));
  if (before.mixerId !== null) others.push(mixerHolder(state, before.mixerId) ?? undefined);
  return others.find((other) => other !== undefined && !(other.id in restored)) ?? null;
}
