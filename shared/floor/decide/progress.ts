import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, StepLife, Workpiece } from '../state.ts';
import { beginCalled } from './begin.ts';
import type { Decision } from './decision.ts';
import { believedStep, type Standing } from './standing.ts';

/**
 * So many pieces of a step are done by now, of all that there are. A step that nobody said was begun has begun with
 * that, and a rest that stood before it is over. Fewer than before is a mis-tap put right.
 */
export function decideReportProgress(state: FloorState, command: CommandOf<'reportProgress'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due, atMs } = believed.value;
  const { stepId, piecesDone } = command;
  const at = { tag: workpiece.tag, stepId };
  if (stepId !== due.action.id) return refused({ code: 'stepNotReached', ...at, currentStepId: due.action.id });
  const has = piecesOf(workpiece);
  if (has === null) return refused({ code: 'noPieces', ...at });
  if (piecesDone > has) return refused({ code: 'morePiecesThanThere', ...at, wanted: piecesDone, has });
  const life = workpiece.steps[stepId];
  if (piecesDone === (life?.piecesDone ?? 0)) return refused({ code: 'nothingChanges', ...at });
  const begun: Result<readonly FloorEvent[], Refusal> = life === undefined ? beginCalled(state, believed.value, context) : accepted([]);
  if (!begun.ok) return begun;
  return accepted([...begun.value, { type: 'stepProgressed', workpieceId: workpiece.id, stepId, atMs, piecesDone }]);
}

/** The device's station works on the step too. */
export function decideHelpStep(state: FloorState, command: CommandOf<'helpStep'>, context: CommandContext): Decision {
  const worked = workedStep(state, command, context);
  if (!worked.ok) return worked;
  const { workpiece, due, life, atMs } = worked.value;
  const { stationId } = context;
  const at = { tag: workpiece.tag, stepId: command.stepId };
  if (stationId === null) return refused({ code: 'stationNeeded', ...at });
  if (!isStation(state, stationId)) return refused({ code: 'stationUnknown', ...at, stationId });
  const ownId = life.stationId ?? due.step.station;
  if (stationId === ownId || life.helperIds.includes(stationId)) return refused({ code: 'alreadyThere', ...at, stationId });
  return accepted([{ type: 'stepHelped', workpieceId: workpiece.id, stepId: command.stepId, atMs, stationId }]);
}

/**
 * A step goes on at another station: from the one that has it, or that the method says, or where the tap was made. A
 * station that helped and now has it helps no longer.
 */
export function decideHandOver(state: FloorState, command: CommandOf<'handOver'>, context: CommandContext): Decision {
  const worked = workedStep(state, command, context);
  if (!worked.ok) return worked;
  const { workpiece, due, life, atMs } = worked.value;
  const { stepId, toStationId } = command;
  const at = { tag: workpiece.tag, stepId };
  if (!isStation(state, toStationId)) return refused({ code: 'stationUnknown', ...at, stationId: toStationId });
  const fromStationId = life.stationId ?? due.step.station ?? context.stationId;
  if (fromStationId === null) return refused({ code: 'stationNeeded', ...at });
  if (fromStationId === toStationId) return refused({ code: 'alreadyThere', ...at, stationId: toStationId });
  return accepted([{ type: 'stepHandedOver', workpieceId: workpiece.id, stepId, atMs, fromStationId, toStationId }]);
}

/** How many pieces there are to work on: its own, or those that a divide will make of it. Null where nobody counts. */
function piecesOf(workpiece: Workpiece): number | null {
  if (workpiece.pieces !== null || workpiece.cuts.length === 0) return workpiece.pieces;
  return workpiece.cuts.reduce((sum, cut) => sum + cut.pieces, 0);
}

/** The step that hands are on, or that somebody watches until its check is passed. A rest needs nobody. */
function workedStep(
  state: FloorState,
  command: CommandOf<'helpStep' | 'handOver'>,
  context: CommandContext,
): Result<Standing & { readonly life: StepLife }, Refusal> {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due } = believed.value;
  const life = workpiece.steps[command.stepId];
  const isWorked = (due.phase === 'working' || due.phase === 'judging') && command.stepId === due.step.id;
  if (!isWorked || life === undefined) return refused({ code: 'notUnderWay', tag: workpiece.tag, stepId: command.stepId });
  return accepted({ ...believed.value, life });
}

function isStation(state: FloorState, stationId: string): boolean {
  return state.kitchen?.document.stations.some((station) => station.id === stationId) ?? false;
}
