import { beginsByItself, type Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { toTenth } from '../tenths.ts';
import { productOf, wayOf } from '../way.ts';
import { additionEvents } from './add-at-step.ts';
import { startOf, startOfNext, stationFields } from './begin.ts';
import type { Decision } from './decision.ts';
import { divideEvents } from './divide.ts';
import { drawEvents } from './draw.ts';
import { feedEvents } from './feed.ts';
import { loadEvents } from './loads.ts';
import { ovenFacts } from './oven.ts';
import { believedStep, type Standing } from './standing.ts';
import { after } from './tentative.ts';
import { giveBackAfter, giveBackAll, takeVessels } from './vessels.ts';

/**
 * A step is done. One tap says everything that follows from it: the rest it ended is over, what it takes is drawn, the
 * next one that begins by itself has begun, a load is in its slots, a divided dough has become its cuts, the vessels
 * that it no longer needs are given back, the last step takes it off the floor.
 */
export function decideFinishStep(state: FloorState, command: CommandOf<'finishStep'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due } = believed.value;
  if (due.phase === 'resting' && due.action.id !== due.step.id && command.stepId === due.step.id)
    return refused({ code: 'stepNotReached', tag: workpiece.tag, stepId: command.stepId, currentStepId: due.action.id });
  if (command.loadPieces !== undefined && command.loadPieces !== workpiece.pieces)
    return partDone(state, command, command.loadPieces, believed.value, context);
  return finishEvents(state, command, believed.value, context, false);
}

/** What follows from a step's end, by a tap of its own or inferred from a later one. */
export function finishEvents(
  state: FloorState,
  command: CommandOf<'finishStep'>,
  { workpiece, way, due, atMs }: Standing,
  context: CommandContext,
  isInferred: boolean,
): Decision {
  const step = due.action;
  const events: FloorEvent[] = [];
  const done = {
    workpieceId: workpiece.id,
    atMs,
    ...stationFields(context),
    ...(isInferred ? { inferred: true as const } : {}),
    ...(context.tapUncertain ? { tapUncertain: true as const } : {}),
  };
  if (due.phase === 'resting' && step.id !== due.step.id) events.push({ type: 'stepDone', ...done, stepId: due.step.id });
  const taken = whatGoesIn(state, command, workpiece, way, step, atMs, context.nowMs);
  if (!taken.ok) return taken;
  events.push(...taken.value, {
    type: 'stepDone',
    ...done,
    stepId: step.id,
    ...(command.piecesDone === undefined ? {} : { piecesDone: command.piecesDone }),
    ...(command.despite === undefined || command.despite.length === 0 ? {} : { despite: [...command.despite] }),
  });
  const what = whatFollows(after(state, events, context), state, command, workpiece, step, atMs, context);
  return what.ok ? accepted([...events, ...what.value]) : what;
}

/** Drawn, fed, added, loaded, taken out, put into tins: everything that is a fact by the time the step is done. */
function whatGoesIn(
  state: FloorState,
  command: CommandOf<'finishStep'>,
  workpiece: Workpiece,
  way: readonly Step[],
  step: Step,
  atMs: number,
  nowMs: number,
): Result<readonly FloorEvent[], Refusal> {
  const parts = [
    () => ovenFacts(state, workpiece, way, step, atMs, nowMs, command.slotIds),
    () => drawEvents(state, workpiece, step, command, atMs),
    () => (workpiece.kind === 'ferment' && step.verb === 'feed' ? feedEvents(state, workpiece, command.feed, atMs) : accepted([])),
    () => additionEvents(state, workpiece, step, command.usedHeldBackG, atMs),
    () => takeVessels(state, workpiece, step, command.despite ?? [], atMs, nowMs),
  ];
  const events: FloorEvent[] = [];
  for (const part of parts) {
    const decided: Result<readonly FloorEvent[], Refusal> = part();
    if (!decided.ok) return decided;
    events.push(...decided.value);
  }
  return accepted(events);
}

/** `then` is the state with the step done; `before` the one that the tap met. */
function whatFollows(
  then: FloorState,
  before: FloorState,
  command: CommandOf<'finishStep'>,
  was: Workpiece,
  step: Step,
  atMs: number,
  context: CommandContext,
): Result<readonly FloorEvent[], Refusal> {
  const workpiece = then.workpieces[was.id] ?? was;
  const way = wayOf(then, workpiece);
  const next = way[way.findIndex((candidate) => candidate.id === step.id) + 1];
  if (step.verb === 'divide' && workpiece.productId === null) {
    const divided = divideEvents(then, workpiece, step, atMs, context, command.cuts);
    return divided.ok ? accepted([...giveBackAll(then, workpiece, atMs), ...divided.value]) : divided;
  }
  const events: FloorEvent[] = [...cookedDown(workpiece, step, atMs), ...giveBackAfter(then, workpiece, step, atMs)];
  const counted = countOf(before, workpiece, step, command.cuts);
  if (!counted.ok) return counted;
  if (counted.value !== workpiece.pieces && counted.value !== null)
    events.push({ type: 'countCorrected', workpieceId: workpiece.id, fromPieces: workpiece.pieces ?? 0, toPieces: counted.value, atMs });
  events.push(...leftOver(workpiece, then, step, counted.value, atMs));
  if (next === undefined) {
    const left = after(then, events, context).workpieces[workpiece.id] ?? workpiece;
    return accepted([...events, ...giveBackAll(then, left, atMs), { type: 'workpieceFinished', workpieceId: workpiece.id, atMs }]);
  }
  const now = after(then, events, context);
  const counts = loadCounts(now, now.workpieces[workpiece.id] ?? workpiece, step);
  const begun =
    counts.length > 1
      ? loadsThenBegin(now, workpiece.id, step, next, counts, atMs, context, command)
      : startOfNext(now, now.workpieces[workpiece.id] ?? workpiece, next, atMs, context, command);
  return begun.ok ? accepted([...events, ...begun.value]) : begun;
}

/** What a prep loses where it is cooked down, by the yield of the step; to 0.1 g. */
function cookedDown({ id, grams }: Workpiece, { yieldPct = 100 }: Step, atMs: number): FloorEvent[] {
  const lostG = toTenth(grams * (1 - yieldPct / 100));
  return lostG > 0 ? [{ type: 'lossNamed', workpieceId: id, what: 'cooking', grams: lostG, atMs }] : [];
}

/** What dividing a dough of one product leaves over: it lies beside it, and can go back into another dough. */
function leftOver(workpiece: Workpiece, state: FloorState, step: Step, pieces: number | null, atMs: number): FloorEvent[] {
  const product = productOf(state, workpiece);
  if (step.verb !== 'divide' || product === null || pieces === null) return [];
  const grams = Math.round((workpiece.grams - pieces * product.pieceG) * 10) / 10;
  return grams > 0 ? [{ type: 'lossNamed', workpieceId: workpiece.id, what: 'trim', grams, atMs }] : [];
}

/** The loads that the product goes on in from a step on, as even as they come; one where it stays together. */
function loadCounts(state: FloorState, workpiece: Workpiece, step: Step): readonly number[] {
  const loads = productOf(state, workpiece)?.loads;
  if (loads === undefined || loads.after !== step.id || workpiece.kind === 'load' || workpiece.pieces === null) return [];
  const count = Math.ceil(workpiece.pieces / loads.pieces);
  const least = Math.floor(workpiece.pieces / count);
  const larger = workpiece.pieces - least * count;
  return Array.from({ length: count }, (_, index) => (index < larger ? least + 1 : least));
}

function loadsThenBegin(
  state: FloorState,
  workpieceId: string,
  step: Step,
  next: Step,
  counts: readonly number[],
  atMs: number,
  context: CommandContext,
  wishes: CommandOf<'finishStep'>,
): Result<readonly FloorEvent[], Refusal> {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined) return accepted([]);
  const loads = loadEvents(state, workpiece, step.id, counts, atMs, context);
  if (!loads.ok) return loads;
  const events: FloorEvent[] = [loads.value];
  for (const { workpieceId: loadId } of loads.value.children) {
    const now = after(state, events, context);
    const load = now.workpieces[loadId];
    const begun: Result<readonly FloorEvent[], Refusal> =
      load === undefined ? accepted([]) : startOfNext(now, load, next, atMs, context, { despite: wishes.despite });
    if (!begun.ok) return begun;
    events.push(...begun.value);
  }
  return accepted(events);
}

/** So many pieces are done and go on as a load of their own; the others stay, under way where it is work piece by piece. */
function partDone(
  state: FloorState,
  command: CommandOf<'finishStep'>,
  pieces: number,
  { workpiece, due, atMs }: Standing,
  context: CommandContext,
): Decision {
  const at = { tag: workpiece.tag, stepId: command.stepId };
  if (workpiece.pieces === null) return refused({ code: 'noPieces', ...at });
  if (pieces > workpiece.pieces) return refused({ code: 'morePiecesThanThere', ...at, wanted: pieces, has: workpiece.pieces });
  const events: FloorEvent[] = [];
  if (due.phase === 'waiting' && (due.action.minutesPerPiece ?? 0) > 0 && !beginsByItself(due.action)) {
    // The vessels are counted for the pieces that are done; the others take theirs when it is their turn.
    const bare: Step = { ...due.action, claims: due.action.claims.filter((claim) => claim.kind !== 'vessel') };
    const begun = startOf(state, workpiece, bare, atMs, context, command);
    if (!begun.ok) return begun;
    events.push(...begun.value);
  }
  const now = after(state, events, context);
  const loads = loadEvents(now, now.workpieces[workpiece.id] ?? workpiece, command.stepId, [pieces], atMs, context);
  if (!loads.ok) return loads;
  events.push(loads.value);
  const [load] = loads.value.children;
  if (load === undefined) return accepted(events);
  const { loadPieces: _done, ...whole } = command;
  const finished = decideFinishStep(after(state, events, context), { ...whole, workpieceId: load.workpieceId }, context);
  return finished.ok ? accepted([...events, ...finished.value]) : finished;
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
