import { beginsByItself, endsByNext, type Step } from '../../documents/method.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { formulaOf } from '../contents.ts';
import type { EventOf, FloorEvent } from '../events.ts';
import { KEEP_FINISHED_MS, type FloorState, type Workpiece } from '../state.ts';
import { productOf, wayOf } from '../way.ts';
import { toTenth } from '../tenths.ts';
import { noneLeft } from './amounts.ts';
import type { Decision } from './decision.ts';
import { standingOf } from './standing.ts';

/** The instant at which a step of a way began or ended. */
interface Edge {
  readonly index: number;
  readonly edge: 'start' | 'end';
  readonly atMs: number;
}

/**
 * A step began or ended at another time than was said: after what came before it on the way, before what came after,
 * and not in the future. What the same tap said moves along: the rest that it ended, the rest that began with it. Dough
 * that is off the floor can be corrected too, for the records.
 */
export function decideCorrectTime(state: FloorState, command: CommandOf<'correctTime'>, context: CommandContext): Decision {
  const { workpieceId, stepId, toMs } = command;
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined) return refused({ code: 'workpieceUnknown', workpieceId });
  const at = { tag: workpiece.tag, stepId };
  const way = wayOf(state, workpiece);
  const stepIndex = way.findIndex((step) => step.id === stepId);
  if (stepIndex === -1) return refused({ code: 'stepUnknown', ...at });
  const edges = edgesOf(way, workpiece);
  const found = edges.findIndex((candidate) => candidate.index === stepIndex && candidate.edge === command.edge);
  const corrected = edges[found];
  if (corrected === undefined) return refused({ code: 'notUnderWay', ...at });
  if (toMs === corrected.atMs) return refused({ code: 'nothingChanges', ...at });
  let first = found;
  let last = found;
  while (isOneTap(way, edges[first - 1], edges[first])) first -= 1;
  while (isOneTap(way, edges[last], edges[last + 1])) last += 1;
  const earliestMs = Math.max(bornMs(state, workpiece), ...edges.slice(0, first).map((edge) => edge.atMs));
  // What it was divided into goes on from that instant.
  const untilMs = workpiece.ending === 'divided' ? (workpiece.finishedMs ?? context.nowMs) : context.nowMs;
  const latestMs = Math.min(context.nowMs, untilMs, ...edges.slice(last + 1).map((edge) => edge.atMs));
  if (toMs < earliestMs || toMs > latestMs) return refused({ code: 'timeOutOfOrder', ...at, earliestMs, latestMs });
  const along = edges.slice(first, last + 1).filter((edge) => edge !== corrected);
  return accepted([corrected, ...along].map((moved) => timeCorrected(way, workpiece, moved, toMs, context)));
}

/** Every instant that is known of the steps of a way, in the order of the way. */
function edgesOf(way: readonly Step[], workpiece: Workpiece): readonly Edge[] {
  return way.flatMap((step, index) => {
    const life = workpiece.steps[step.id];
    const edges: Edge[] = [];
    if (life !== undefined && life.startedMs !== null) edges.push({ index, edge: 'start', atMs: life.startedMs });
    if (life !== undefined && life.endedMs !== null) edges.push({ index, edge: 'end', atMs: life.endedMs });
    return edges;
  });
}

/** Whether two instants that follow on the way are one: a rest is over when the next step is tapped, a rest begins by itself. */
function isOneTap(way: readonly Step[], before: Edge | undefined, after: Edge | undefined): boolean {
  if (before === undefined || after === undefined || before.edge !== 'end') return false;
  const [ended, begun] = [way[before.index], way[after.index]];
  if (ended === undefined || begun === undefined || after.index !== before.index + 1 || before.atMs !== after.atMs) return false;
  return endsByNext(ended) || (after.edge === 'start' && beginsByItself(begun));
}

/** Nothing happened to it before this: its cut was made, or it lies further back than the live state remembers. */
function bornMs(state: FloorState, workpiece: Workpiece): number {
  if (workpiece.kind === 'cut') return workpiece.plannedStartMs;
  const parent = workpiece.parentId === null ? undefined : state.workpieces[workpiece.parentId];
  // A load has the steps of its cut from before it was made.
  if (parent !== undefined) return bornMs(state, parent);
  return Math.max(0, workpiece.plannedStartMs - KEEP_FINISHED_MS);
}

function timeCorrected(
  way: readonly Step[],
  workpiece: Workpiece,
  moved: Edge,
  toMs: number,
  context: CommandContext,
): EventOf<'timeCorrected'> {
  return {
    type: 'timeCorrected',
    workpieceId: workpiece.id,
    stepId: way[moved.index]?.id ?? '',
    edge: moved.edge,
    fromMs: moved.atMs,
    toMs,
    atMs: context.tapMs,
  };
}

/**
 * There are more or fewer pieces than was said. Fewer have lost their weight, once it is in pieces: before that, all of
 * the dough is still there. More, only where the weight bears them. None, and it is off the floor.
 */
export function decideCorrectCount(state: FloorState, command: CommandOf<'correctCount'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, due, atMs } = standing.value;
  const { pieces: toPieces, reason } = command;
  const { tag, pieces: fromPieces } = workpiece;
  if (fromPieces === null) return refused({ code: 'noPieces', tag });
  if (toPieces === fromPieces) return refused({ code: 'nothingChanges', tag });
  const neededG = toTenth(toPieces * leastPieceG(state, workpiece));
  if (toPieces > fromPieces && neededG > workpiece.grams) return refused({ code: 'cutsTooHeavy', tag, neededG, hasG: workpiece.grams });
  const said = reason === undefined ? {} : { reason };
  const events: FloorEvent[] = [{ type: 'countCorrected', workpieceId: workpiece.id, fromPieces, toPieces, ...said, atMs }];
  const isInPieces = productOf(state, workpiece)?.way.some((step) => step.id === due.step.id) ?? false;
  if (toPieces < fromPieces && isInPieces) {
    const pieces = fromPieces - toPieces;
    const grams = toPieces === 0 ? workpiece.grams : toTenth((workpiece.grams * pieces) / fromPieces);
    events.push({ type: 'lossNamed', workpieceId: workpiece.id, what: 'pieces', grams, pieces, atMs });
  }
  return accepted(toPieces === 0 ? [...events, ...noneLeft(state, standing.value, reason)] : events);
}

/** What a piece weighs at least: as dough, or once it has been in the oven, as bread. */
function leastPieceG(state: FloorState, workpiece: Workpiece): number {
  const product = productOf(state, workpiece);
  if (product === null) return 0;
  const isBaked = product.way.some((step) => step.kind === 'bake' && workpiece.steps[step.id]?.status === 'done');
  return isBaked ? product.pieceG * (1 - product.bakeLossPct / 100) : product.pieceG;
}

/** It bore another dough's tag. Where that dough is here, the two change tags; what came of them keeps its own. */
export function decideCorrectTag(state: FloorState, command: CommandOf<'correctTag'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, atMs } = standing.value;
  const { toTag } = command;
  const { tag: fromTag } = workpiece;
  if (toTag === fromTag) return refused({ code: 'nothingChanges', tag: fromTag });
  const isOwn = lettersOf(toTag) === formulaOf(state, workpiece)?.letters && formOf(toTag) === formOf(fromTag);
  if (!isOwn) return refused({ code: 'tagOfOther', tag: fromTag, wantedTag: toTag });
  const bearers = Object.values(state.workpieces).filter(
    (other) => other.tag === toTag && other.serviceDate === workpiece.serviceDate && other.id !== workpiece.id,
  );
  const other = bearers.find((bearer) => bearer.finishedMs === null) ?? bearers[0];
  const events: FloorEvent[] = [{ type: 'tagCorrected', workpieceId: workpiece.id, fromTag, toTag, atMs }];
  if (other !== undefined) events.push({ type: 'tagCorrected', workpieceId: other.id, fromTag: toTag, toTag: fromTag, atMs });
  return accepted(events);
}

/** The letters of the formula at the head of a tag. */
function lettersOf(tag: string): string {
  return /^[A-Z][a-z]?/.exec(tag)?.[0] ?? '';
}

/** What kind of tag it is, whatever its numbers: of a dough, of a cut, of a load. */
function formOf(tag: string): string {
  return tag.slice(lettersOf(tag).length).replaceAll(/\d+/g, '0').replaceAll(/[a-z]/g, 'a');
}
