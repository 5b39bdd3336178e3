import { derivedId } from '../../ids.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { standingOf, type Standing } from './standing.ts';
import { giveBackAll } from './vessels.ts';

/**
 * Mixes of one formula that stand at one step go on in one tub. The one that has stood there longest leads: the joined
 * dough bears its tag and is due by its clock.
 */
export function decideJoin(state: FloorState, command: CommandOf<'joinWorkpieces'>, context: CommandContext): Decision {
  const standings: Standing[] = [];
  for (const workpieceId of new Set(command.workpieceIds)) {
    const standing = standingOf(state, workpieceId, context);
    if (!standing.ok) return standing;
    standings.push(standing.value);
  }
  const [first, ...others] = standings.sort((a, b) => sinceMs(a) - sinceMs(b));
  if (first === undefined) return refused({ code: 'nothingChanges' });
  const odd = others.length === 0 ? first : standings.find((other) => !canJoin(first, other));
  if (odd !== undefined) {
    const { workpiece, due } = standings.find((other) => other !== odd) ?? odd;
    return refused({ code: 'notJoinable', tag: workpiece.tag, stepId: due.action.id, otherTag: odd.workpiece.tag });
  }
  const atMs = Math.max(...standings.map((standing) => standing.atMs));
  const joinedId = derivedId(context.commandId, 0);
  return accepted([
    ...others.flatMap(({ workpiece }) => giveBackAll(state, workpiece, atMs)),
    {
      type: 'workpiecesJoined',
      workpieceId: joinedId,
      tag: first.workpiece.tag,
      parents: standings.map(({ workpiece }) => ({ workpieceId: workpiece.id, grams: workpiece.grams })),
      atMs,
    },
    // They go on in the tub of the one that leads.
    ...first.workpiece.vessels.map((held) => ({ type: 'vesselsTaken' as const, workpieceId: joinedId, ...held, atMs })),
  ]);
}

function sinceMs({ due, workpiece }: Standing): number {
  return due.startedMs ?? workpiece.readyMs;
}

function canJoin({ workpiece: lead, due }: Standing, { workpiece: other, due: otherDue }: Standing): boolean {
  return (
    other.kind === 'batch' &&
    other.formulaId === lead.formulaId &&
    other.formulaVersion === lead.formulaVersion &&
    // One way ahead: a dough that becomes one product goes another than one that is still to be divided.
    other.productId === lead.productId &&
    other.productVersion === lead.productVersion &&
    otherDue.action.id === due.action.id &&
    // Nothing is joined that is not mixed yet.
    otherDue.phase !== 'planned' &&
    other.slotIds.length === 0
  );
}
