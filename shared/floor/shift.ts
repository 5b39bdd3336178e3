import type { Call, FloorState, PlaceAir, Plan, SoundTest, StepLife, UndoEntry, Workpiece } from './state.ts';

/**
 * Moves every instant of open work by so much: after the server's clock was set, everything has just as long left as
 * before, so the jump neither fires nor swallows a call.
 */
export function shiftOpenInstants(state: FloorState, byMs: number): FloorState {
  const workpieces = mapValues(state.workpieces, (workpiece) => shiftWorkpiece(workpiece, byMs));
  const undo = mapValues(state.undo, (entry): UndoEntry => ({
    ...entry,
    before: mapValues(entry.before, (before) => (before === null ? null : shiftWorkpiece(before, byMs))),
    cleanedBefore: shiftBlocks(entry.cleanedBefore, byMs),
  }));
  const blocked = shiftBlocks(state.blocked, byMs);
  const vesselReturns = state.vesselReturns.map((back) => ({ ...back, freeMs: back.freeMs + byMs }));
  return {
    ...state,
    jumpedMs: state.jumpedMs + byMs,
    workpieces,
    undo,
    blocked,
    vesselReturns,
    deckSets: mapValues(state.deckSets, ({ fromC, sinceMs }) => ({ fromC, sinceMs: sinceMs + byMs })),
    slotHeat: mapValues(state.slotHeat, (samples) => samples.map((sample) => ({ ...sample, atMs: sample.atMs + byMs }))),
    testPieces: mapValues(state.testPieces, (piece) => ({ ...piece, startedMs: piece.startedMs + byMs })),
    placeAir: mapValues(state.placeAir, (air) => shiftAir(air, byMs)),
    plan: state.plan === null ? null : shiftPlan(state.plan, byMs),
    lastSoundedMs: mapValues(state.lastSoundedMs, (atMs) => atMs + byMs),
    soundTest: state.soundTest === null ? null : shiftSoundTest(state.soundTest, byMs),
    soundHeardMs: shifted(state.soundHeardMs, byMs),
    soundUnheardMs: shifted(state.soundUnheardMs, byMs),
  };
}

/** Orders and pins are clock times that somebody wants: they stay. */
function shiftPlan(plan: Plan, byMs: number): Plan {
  return {
    ...plan,
    madeMs: shifted(plan.madeMs, byMs),
    movedMs: shifted(plan.movedMs, byMs),
    steps: mapValues(plan.steps, (steps) =>
      steps.map((step) => ({
        ...step,
        plannedStartMs: step.plannedStartMs + byMs,
        ...(step.plannedEndMs === undefined ? {} : { plannedEndMs: step.plannedEndMs + byMs }),
      })),
    ),
    moved: plan.moved.map((move) => ({ ...move, fromMs: move.fromMs + byMs, toMs: move.toMs + byMs })),
    warnings: plan.warnings.map((warning) => ('atMs' in warning ? { ...warning, atMs: warning.atMs + byMs } : warning)),
  };
}

function shiftAir({ readings, openings, programme }: PlaceAir, byMs: number): PlaceAir {
  return {
    readings: readings.map((reading) => ({ ...reading, atMs: reading.atMs + byMs })),
    openings: openings.map(({ fromMs, toMs }) => ({ fromMs: fromMs + byMs, toMs: toMs + byMs })),
    programme: programme === null ? null : { ...programme, begunMs: programme.begunMs + byMs },
  };
}

function shiftBlocks(blocks: FloorState['blocked'], byMs: number): FloorState['blocked'] {
  return blocks.map((block) => ({
    ...block,
    atMs: block.atMs + byMs,
    ...(block.untilMs === undefined ? {} : { untilMs: block.untilMs + byMs }),
  }));
}

function mapValues<From, To>(record: Readonly<Record<string, From>>, change: (value: From) => To): Record<string, To> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}

function shiftWorkpiece(workpiece: Workpiece, byMs: number): Workpiece {
  return workpiece.finishedMs === null ? jumped(workpiece, byMs) : workpiece;
}

/** With every instant of its work moved, whether it is over or not. */
export function jumped(workpiece: Workpiece, byMs: number): Workpiece {
  return {
    ...workpiece,
    jumpedMs: workpiece.jumpedMs + byMs,
    plannedStartMs: workpiece.plannedStartMs + byMs,
    readyMs: workpiece.readyMs + byMs,
    heldUntilMs: shifted(workpiece.heldUntilMs, byMs),
    steps: mapValues(workpiece.steps, (life): StepLife => ({
      ...life,
      startedMs: shifted(life.startedMs, byMs),
      endedMs: shifted(life.endedMs, byMs),
    })),
    readings: workpiece.readings.map((reading) => ({ ...reading, atMs: reading.atMs + byMs })),
    holdingDecisions: workpiece.holdingDecisions.map((decision) => ({
      ...decision,
      limitMs: decision.limitMs + byMs,
      untilMs: decision.untilMs + byMs,
      atMs: decision.atMs + byMs,
    })),
    stays: workpiece.stays.map((stay) => ({ ...stay, sinceMs: stay.sinceMs + byMs })),
    weighed: mapValues(workpiece.weighed, (weighed) => ({ ...weighed, atMs: weighed.atMs + byMs })),
    water: workpiece.water === null ? null : { ...workpiece.water, atMs: workpiece.water.atMs + byMs },
    stock:
      workpiece.stock === null
        ? null
        : {
            ...workpiece.stock,
            fedMs: shifted(workpiece.stock.fedMs, byMs),
            plannedFeeds: workpiece.stock.plannedFeeds.map((feed) => ({ ...feed, feedMs: feed.feedMs + byMs })),
          },
    call: workpiece.call === null ? null : shiftCall(workpiece.call, byMs),
  };
}

function shiftCall(call: Call, byMs: number): Call {
  return {
    ...call,
    dueMs: call.dueMs + byMs,
    raisedMs: call.raisedMs + byMs,
    heardMs: shifted(call.heardMs, byMs),
    lastSoundedMs: shifted(call.lastSoundedMs, byMs),
  };
}

function shiftSoundTest(test: SoundTest, byMs: number): SoundTest {
  return {
    ...test,
    askedMs: test.askedMs + byMs,
    soundedMs: shifted(test.soundedMs, byMs),
    answeredMs: shifted(test.answeredMs, byMs),
  };
}

function shifted(atMs: number | null, byMs: number): number | null {
  return atMs === null ? null : atMs + byMs;
}
