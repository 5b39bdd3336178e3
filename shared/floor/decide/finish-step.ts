import type { Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import { decksFor, decksOf, slotHolders, slotsNeeded } from '../slots.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { productOf } from '../way.ts';
import { startOfNext, stationFields } from './begin.ts';
import type { Decision } from './decision.ts';
import { divideEvents } from './divide.ts';
import { believedStep } from './standing.ts';

/**
 * A step is done. One tap says everything that follows from it: the rest it ended is over, the next one that begins
 * by itself has begun, a load is in its slots, a divided dough has become its cuts, the last step takes it off the floor.
 */
export function decideFinishStep(state: FloorState, command: CommandOf<'finishStep'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, way, due, atMs } = believed.value;
  const isRestEnding = due.phase === 'resting' && due.action.id !== due.step.id;
  if (isRestEnding && command.stepId === due.step.id)
    return refused({ code: 'stepNotReached', tag: workpiece.tag, stepId: command.stepId, currentStepId: due.action.id });
  const step = due.action;
  const events: FloorEvent[] = [];
  const done = {
    workpieceId: workpiece.id,
    atMs,
    ...stationFields(context),
    ...(context.tapUncertain ? { tapUncertain: true as const } : {}),
  };
  if (isRestEnding) events.push({ type: 'stepDone', ...done, stepId: due.step.id });
  const ovenEvents = ovenFacts(state, workpiece, step, atMs, command.slotIds);
  if (!ovenEvents.ok) return ovenEvents;
  events.push(...ovenEvents.value);
  events.push({
    type: 'stepDone',
    ...done,
    stepId: step.id,
    ...(command.piecesDone === undefined ? {} : { piecesDone: command.piecesDone }),
  });
  const next = way[way.findIndex((candidate) => candidate.id === step.id) + 1];
  if (step.verb === 'divide' && workpiece.productId === null) {
    const divided = divideEvents(state, workpiece, step, atMs, context, command.cuts);
    return divided.ok ? accepted([...events, ...divided.value]) : divided;
  }
  const counted = countOf(state, workpiece, step, command.cuts);
  if (!counted.ok) return counted;
  if (counted.value !== workpiece.pieces && counted.value !== null) {
    events.push({ type: 'countCorrected', workpieceId: workpiece.id, fromPieces: workpiece.pieces ?? 0, toPieces: counted.value, atMs });
  }
  if (next === undefined) {
    events.push({ type: 'workpieceFinished', workpieceId: workpiece.id, atMs });
    return accepted(events);
  }
  const begun = startOfNext(state, { ...workpiece, pieces: counted.value }, next, atMs, context);
  return begun.ok ? accepted([...events, ...begun.value]) : begun;
}

/** The pieces of a dough that becomes one product, as counted where somebody counted when dividing, never weighing more than it has. */
function countOf(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  cuts: CommandOf<'finishStep'>['cuts'],
): Result<number | null, Refusal> {
  const product = productOf(state, workpiece);
  if (step.verb !== 'divide' || cuts === undefined || product === null) return accepted(workpiece.pieces);
  const at = { tag: workpiece.tag, stepId: step.id };
  const other = cuts.find((cut) => cut.productId !== product.id);
  if (other !== undefined) return refused({ code: 'productUnknown', ...at, productId: other.productId });
  const pieces = cuts.reduce((sum, cut) => sum + cut.pieces, 0);
  const neededG = pieces * product.pieceG;
  return neededG > workpiece.grams ? refused({ code: 'cutsTooHeavy', ...at, neededG, hasG: workpiece.grams }) : accepted(pieces);
}

function ovenFacts(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  atMs: number,
  wantedSlotIds: readonly string[] | undefined,
): Result<readonly FloorEvent[], Refusal> {
  if (step.verb === 'takeOut' && workpiece.slotIds.length > 0) {
    return accepted([{ type: 'ovenUnloaded', workpieceId: workpiece.id, stepId: step.id, atMs, slotIds: [...workpiece.slotIds] }]);
  }
  if (step.verb !== 'load') return accepted([]);
  const slots = chosenSlots(state, workpiece, step, wantedSlotIds);
  if (!slots.ok) return slots;
  return accepted([
    {
      type: 'ovenLoaded',
      workpieceId: workpiece.id,
      stepId: step.id,
      atMs,
      slotIds: [...slots.value],
      ...(workpiece.pieces === null ? {} : { pieces: workpiece.pieces }),
    },
  ]);
}

function chosenSlots(
  state: FloorState,
  workpiece: Workpiece,
  load: Step,
  wanted: readonly string[] | undefined,
): Result<readonly string[], Refusal> {
  const kitchen = state.kitchen?.document;
  const decks = kitchen === undefined ? [] : decksFor(kitchen, load);
  const holders = slotHolders(state);
  const candidates = decks.flatMap((deck) => deck.slots.map((slot) => slot.id));
  const freeSlotIds = candidates.filter((slotId) => !holders.has(slotId));
  const at = { tag: workpiece.tag, stepId: load.id };
  if (wanted !== undefined) {
    const known = new Set(kitchen === undefined ? [] : decksOf(kitchen).flatMap((deck) => deck.slots.map((slot) => slot.id)));
    for (const slotId of wanted) {
      if (!known.has(slotId)) return refused({ code: 'slotUnknown', ...at, slotId });
      const holder = holders.get(slotId);
      if (holder !== undefined) return refused({ code: 'slotTaken', ...at, slotId, takenByTag: holder.tag, freeSlotIds });
    }
    return accepted([...new Set(wanted)]);
  }
  const needed = slotsNeeded(state, workpiece, load);
  if (freeSlotIds.length < needed) {
    const takenByTags = [...new Set(candidates.map((slotId) => holders.get(slotId)?.tag).filter((tag) => tag !== undefined))];
    return refused({ code: 'noFreeSlot', ...at, deckIds: decks.map((deck) => deck.id), takenByTags });
  }
  return accepted(freeSlotIds.slice(0, needed));
}
