import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { holdingOf, pastLimitAt } from '../holding.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { standingOf } from './standing.ts';

const MINUTE_MS = 60_000;

/**
 * Food is used beyond its limit, for so many minutes from now: the responsible person's decision, with the rule that it goes against and the
 * reason. Only where a limit runs; one that would end before it says nothing.
 */
export function decideDecideHolding(state: FloorState, command: CommandOf<'decideHolding'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, atMs } = standing.value;
  const holding = holdingOf(state, workpiece);
  const limit = holding?.limit ?? null;
  const untilMs = atMs + command.minutes * MINUTE_MS;
  if (holding === null || limit === null || untilMs <= limit.limitMs) return refused({ code: 'nothingChanges', tag: workpiece.tag });
  return accepted([
    {
      type: 'holdingDecided',
      workpieceId: workpiece.id,
      limitMs: limit.ruleMs,
      ruleSet: holding.rules.name,
      clause: limit.clause,
      reason: command.reason,
      untilMs,
      atMs,
    },
  ]);
}

/**
 * A plain stop: what would use food that is past its limit is refused, until it is discarded or somebody responsible has decided.
 * Taking out of the oven is never refused: what is past its limit shall not burn as well.
 */
export function unlessPastLimit(state: FloorState, decision: Decision): Decision {
  if (!decision.ok) return decision;
  const takenOut = new Set(decision.value.flatMap((event) => (event.type === 'ovenUnloaded' ? [event.workpieceId] : [])));
  for (const event of decision.value) {
    for (const workpieceId of usedBy(event)) {
      const refusal = takenOut.has(workpieceId) ? null : pastLimit(state, workpieceId, event);
      if (refusal !== null) return refused(refusal);
    }
  }
  return decision;
}

/** The food that goes on, or into something else, with an event. */
function usedBy(event: FloorEvent): readonly string[] {
  switch (event.type) {
    case 'stepStarted':
    case 'stepDone':
    case 'stepSkipped':
    case 'workpieceDivided':
    case 'loadsMade':
      return [event.workpieceId];
    case 'workpieceDrawn':
    case 'scrapPutBack':
      return [event.fromWorkpieceId, event.toWorkpieceId];
    case 'workpiecesJoined':
      return event.parents.map((parent) => parent.workpieceId);
    default:
      return [];
  }
}

function pastLimit(state: FloorState, workpieceId: string, event: FloorEvent): Refusal | null {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined || !('atMs' in event) || event.atMs === undefined) return null;
  const past = pastLimitAt(state, workpiece, event.atMs);
  if (past === null) return null;
  const { limit, holding } = past;
  return {
    code: 'pastHoldingLimit',
    tag: workpiece.tag,
    limitMs: limit.limitMs,
    ruleSet: holding.rules.name,
    clause: limit.clause,
    why: limit.why,
  };
}
