import { unreachable } from '../result.ts';
import { allergensOf, broughtWith } from './contents.ts';
import type { EventOf, FloorEvent, RecordedEvent, VesselsHeld } from './events.ts';
import { cleaningOver } from './mixers.ts';
import { feedsAhead } from './planned-feeds.ts';
import { CORRECTIONS_KEPT, type Correction, type FloorState, type StepLife, type Workpiece } from './state.ts';
import { wayOf } from './way.ts';

type WorkEvent = EventOf<
  | 'stepStarted'
  | 'stepProgressed'
  | 'stepHandedOver'
  | 'stepHelped'
  | 'stepsReopened'
  | 'lossNamed'
  | 'stepDone'
  | 'stepSkipped'
  | 'moreTimeGiven'
  | 'promptAnswered'
  | 'workpieceHeld'
  | 'workpieceReleased'
  | 'workpieceMoved'
  | 'workpieceFinished'
  | 'workpieceDiscarded'
  | 'holdingDecided'
  | 'ovenLoaded'
  | 'ovenUnloaded'
  | 'loadMoved'
  | 'temperatureRead'
  | 'ingredientAdded'
  | 'waterHeldBackUsed'
  | 'vesselsTaken'
  | 'vesselsReturned'
  | 'timeCorrected'
  | 'countCorrected'
  | 'tagCorrected'
>;

const TYPES: ReadonlySet<string> = new Set<WorkEvent['type']>([
  'stepStarted',
  'stepProgressed',
  'stepHandedOver',
  'stepHelped',
  'stepsReopened',
  'lossNamed',
  'stepDone',
  'stepSkipped',
  'moreTimeGiven',
  'promptAnswered',
  'workpieceHeld',
  'workpieceReleased',
  'workpieceMoved',
  'workpieceFinished',
  'workpieceDiscarded',
  'holdingDecided',
  'ovenLoaded',
  'ovenUnloaded',
  'loadMoved',
  'temperatureRead',
  'ingredientAdded',
  'waterHeldBackUsed',
  'vesselsTaken',
  'vesselsReturned',
  'timeCorrected',
  'countCorrected',
  'tagCorrected',
]);

/** Stays kept in the live state for one workpiece; the journal has them all. */
const STAYS_KEPT = 24;

/** Decisions about holding kept in the live state for one workpiece; the journal has them all. */
const DECISIONS_KEPT = 20;

/** Readings kept in the live state for one workpiece; the journal has them all. */
const READINGS_KEPT = 20;

/** Whether the event is about work on one workpiece. */
export function isWorkEvent(event: FloorEvent): event is WorkEvent {
  return TYPES.has(event.type);
}

/** What happened to one workpiece. */
export function evolveWork(state: FloorState, event: WorkEvent, recorded: RecordedEvent): FloorState {
  const workpiece = state.workpieces[event.workpieceId];
  if (workpiece === undefined) return state;
  const changed = { ...workOn(state, workpiece, event, recorded), lastCommandId: recorded.commandId };
  return withResources({ ...state, workpieces: { ...state.workpieces, [workpiece.id]: changed } }, workpiece, event, recorded);
}

function workOn(state: FloorState, workpiece: Workpiece, event: WorkEvent, recorded: RecordedEvent): Workpiece {
  switch (event.type) {
    case 'stepStarted':
      return started(workpiece, event, recorded.deviceId);
    case 'stepDone':
      return { ...ended(state, workpiece, event, recorded.deviceId, 'done'), lastDoneCommandId: recorded.commandId };
    case 'stepSkipped':
      return {
        ...ended(state, workpiece, event, recorded.deviceId, 'skipped'),
        stock: feedLeftOut(state, workpiece, event),
        lastDoneCommandId: recorded.commandId,
      };
    case 'stepProgressed':
      return withLife(workpiece, event.stepId, (life) => ({ ...life, piecesDone: event.piecesDone }));
    case 'stepHandedOver':
      return withLife(workpiece, event.stepId, (life) => ({
        ...life,
        stationId: event.toStationId,
        helperIds: life.helperIds.filter((stationId) => stationId !== event.toStationId),
      }));
    case 'stepHelped':
      return withLife(workpiece, event.stepId, (life) => ({ ...life, helperIds: [...life.helperIds, event.stationId] }));
    case 'stepsReopened':
      return reopened(workpiece, event, recorded.deviceId);
    case 'lossNamed':
      return lost(workpiece, event);
    case 'moreTimeGiven':
      return moreTime(workpiece, event);
    case 'promptAnswered':
      return withLife({ ...workpiece, call: null }, event.stepId, (life) => ({ ...life, phaseDone: event.phase }));
    case 'workpieceHeld':
      return { ...workpiece, heldUntilMs: event.untilMs, call: null };
    case 'workpieceReleased':
      return { ...workpiece, heldUntilMs: null };
    case 'workpieceMoved':
      return { ...workpiece, ...standing(workpiece, event.placeId, event.atMs) };
    case 'workpieceFinished':
      return { ...workpiece, finishedMs: event.atMs, ending: 'finished', ...offTheFloor(workpiece, event.atMs) };
    case 'workpieceDiscarded':
      return {
        ...workpiece,
        finishedMs: event.atMs,
        ending: 'discarded',
        lastDoneCommandId: recorded.commandId,
        ...offTheFloor(workpiece, event.atMs),
      };
    case 'holdingDecided': {
      const { type: _type, workpieceId: _id, ...decision } = event;
      const decided = [...workpiece.holdingDecisions, { ...decision, deviceId: recorded.deviceId }];
      return { ...workpiece, call: null, holdingDecisions: decided.slice(-DECISIONS_KEPT) };
    }
    case 'ovenLoaded':
      return { ...workpiece, slotIds: event.slotIds, ...standing(workpiece, null, event.atMs) };
    case 'ovenUnloaded':
      return { ...workpiece, slotIds: workpiece.slotIds.filter((slotId) => !event.slotIds.includes(slotId)) };
    case 'loadMoved':
      return withMoved({ ...workpiece, slotIds: event.slotIds });
    case 'temperatureRead': {
      const reading = { where: event.where, celsius: event.celsius, atMs: event.atMs };
      return { ...workpiece, readings: [...workpiece.readings, reading].slice(-READINGS_KEPT) };
    }
    case 'timeCorrected':
      return corrected(timeMoved(workpiece, event), recorded.deviceId, {
        what: event.edge,
        stepId: event.stepId,
        from: event.fromMs,
        to: event.toMs,
        atMs: event.atMs,
      });
    case 'countCorrected':
      return corrected({ ...workpiece, pieces: event.toPieces }, recorded.deviceId, {
        what: 'count',
        stepId: null,
        from: event.fromPieces,
        to: event.toPieces,
        atMs: event.atMs,
      });
    case 'tagCorrected':
      return corrected({ ...workpiece, tag: event.toTag }, recorded.deviceId, {
        what: 'tag',
        stepId: null,
        from: event.fromTag,
        to: event.toTag,
        atMs: event.atMs,
      });
    case 'ingredientAdded':
      return {
        ...workpiece,
        grams: workpiece.grams + (event.isExtra === true ? event.grams : 0),
        broughtIn: broughtWith(
          workpiece.broughtIn,
          state.ingredients?.document.find((ingredient) => ingredient.id === event.ingredientId)?.allergens ?? [],
          event.lotNumber === undefined ? [] : [{ ingredientId: event.ingredientId, lotNumber: event.lotNumber }],
        ),
      };
    case 'waterHeldBackUsed':
      // What was not used is named as a loss by its own event.
      return workpiece;
    case 'vesselsTaken':
      return { ...workpiece, vessels: vesselsWith(workpiece.vessels, event.vesselId, event.count) };
    case 'vesselsReturned':
      return { ...workpiece, vessels: vesselsWith(workpiece.vessels, event.vesselId, -event.count) };
    default:
      return unreachable(event);
  }
}

function offTheFloor(
  workpiece: Workpiece,
  atMs: number,
): Pick<Workpiece, 'placeId' | 'stays' | 'mixerId' | 'bowlId' | 'slotIds' | 'call' | 'heldUntilMs'> {
  return { ...standing(workpiece, null, atMs), mixerId: null, bowlId: null, slotIds: [], call: null, heldUntilMs: null };
}

/** It stands somewhere from an instant on; where it stands there already, nothing changes. */
function standing(workpiece: Workpiece, placeId: string | null, atMs: number): Pick<Workpiece, 'placeId' | 'stays'> {
  const { stays } = workpiece;
  if ((stays.at(-1)?.placeId ?? null) === placeId) return { placeId, stays };
  return { placeId, stays: [...stays, { placeId, sinceMs: atMs }].slice(-STAYS_KEPT) };
}

function withLife(workpiece: Workpiece, stepId: string, change: (life: StepLife) => StepLife): Workpiece {
  const life = workpiece.steps[stepId];
  return life === undefined ? workpiece : { ...workpiece, steps: { ...workpiece.steps, [stepId]: change(life) } };
}

/** What it bakes in now is not what it has baked in: that teaches nothing of either. */
function withMoved(workpiece: Workpiece): Workpiece {
  const steps = Object.entries(workpiece.steps).map(
    ([id, life]) => [id, life.status === 'started' ? { ...life, isMoved: true } : life] as const,
  );
  return { ...workpiece, steps: Object.fromEntries(steps) };
}

function started(workpiece: Workpiece, event: EventOf<'stepStarted'>, deviceId: string): Workpiece {
  const life: StepLife = {
    status: 'started',
    startedMs: event.atMs,
    endedMs: null,
    startedBy: deviceId,
    endedBy: null,
    stationId: event.stationId ?? null,
    helperIds: [],
    moreMin: 0,
    phaseDone: null,
    isMoved: false,
    pins: event.pins,
    piecesDone: null,
    inferred: false,
    despite: event.despite ?? [],
    reason: null,
  };
  const isFreed = (kind: string): boolean => event.freed?.some((resource) => resource.kind === kind) ?? false;
  const taken = (kind: string): string | null => event.resources.find((resource) => resource.kind === kind)?.id ?? null;
  return {
    ...workpiece,
    steps: { ...workpiece.steps, [event.stepId]: life },
    ...standing(workpiece, taken('restPlace') ?? workpiece.placeId, event.atMs),
    mixerId: taken('mixer') ?? (isFreed('mixer') ? null : workpiece.mixerId),
    bowlId: taken('bowl') ?? workpiece.bowlId,
    call: null,
    heldUntilMs: null,
  };
}

function ended(
  state: FloorState,
  workpiece: Workpiece,
  event: EventOf<'stepDone' | 'stepSkipped'>,
  deviceId: string,
  status: 'done' | 'skipped',
): Workpiece {
  const before = workpiece.steps[event.stepId];
  const life: StepLife = {
    status,
    startedMs: before?.startedMs ?? null,
    endedMs: event.atMs,
    startedBy: before?.startedBy ?? null,
    endedBy: deviceId,
    stationId: (event.type === 'stepDone' ? event.stationId : undefined) ?? before?.stationId ?? null,
    helperIds: before?.helperIds ?? [],
    moreMin: before?.moreMin ?? 0,
    phaseDone: before?.phaseDone ?? null,
    isMoved: before?.isMoved ?? false,
    pins: before?.pins ?? null,
    piecesDone: (event.type === 'stepDone' ? event.piecesDone : undefined) ?? before?.piecesDone ?? null,
    inferred: event.type === 'stepDone' && event.inferred === true,
    despite: [...(before?.despite ?? []), ...(event.type === 'stepDone' ? (event.despite ?? []) : [])],
    reason: event.type === 'stepSkipped' ? event.reason : null,
  };
  const way = wayOf(state, workpiece);
  const next = way[way.findIndex((step) => step.id === event.stepId) + 1];
  const keepsMixer = next?.claims.some((claim) => claim.kind === 'mixer') ?? false;
  const ahead = way.slice(way.findIndex((step) => step.id === event.stepId) + 1);
  // The bowl goes on from phase to phase, whether the mixer does or not.
  const keepsBowl = ahead.some((step) => step.claims.some((claim) => claim.kind === 'mixer' || claim.kind === 'bowl'));
  return {
    ...workpiece,
    steps: { ...workpiece.steps, [event.stepId]: life },
    readyMs: event.atMs,
    mixerId: keepsMixer ? workpiece.mixerId : null,
    bowlId: keepsBowl ? workpiece.bowlId : null,
    call: null,
    heldUntilMs: null,
  };
}

/** A planned feed that is left out is not asked for again. */
function feedLeftOut(state: FloorState, workpiece: Workpiece, event: EventOf<'stepSkipped'>): Workpiece['stock'] {
  const { stock } = workpiece;
  const isFeed = wayOf(state, workpiece).find((step) => step.id === event.stepId)?.verb === 'feed';
  return stock === null || !isFeed ? stock : { ...stock, plannedFeeds: feedsAhead(stock, event.atMs) };
}

function moreTime(workpiece: Workpiece, event: EventOf<'moreTimeGiven'>): Workpiece {
  const eased: Workpiece = { ...workpiece, call: null, heldUntilMs: null };
  if (workpiece.steps[event.stepId] === undefined) return { ...eased, readyMs: workpiece.readyMs + event.minutes * 60_000 };
  return withLife(eased, event.stepId, (life) => ({ ...life, moreMin: life.moreMin + event.minutes }));
}

function lost(workpiece: Workpiece, event: EventOf<'lossNamed'>): Workpiece {
  const grams = Math.max(0, workpiece.grams - event.grams);
  // Trimmings are still dough: they can go back into another one.
  return { ...workpiece, grams, scrapG: workpiece.scrapG + (event.what === 'trim' ? event.grams : 0) };
}

function corrected(workpiece: Workpiece, deviceId: string, correction: Omit<Correction, 'deviceId'>): Workpiece {
  return { ...workpiece, corrections: [...workpiece.corrections, { ...correction, deviceId }].slice(-CORRECTIONS_KEPT) };
}

/** The step after one that ended at the wrong time was ready, and began by itself, when that one really ended. */
function timeMoved(workpiece: Workpiece, event: EventOf<'timeCorrected'>): Workpiece {
  const moved = withLife(workpiece, event.stepId, (life) =>
    event.edge === 'start' ? { ...life, startedMs: event.toMs } : { ...life, endedMs: event.toMs },
  );
  if (event.edge !== 'end') return { ...moved, call: null };
  return { ...moved, call: null, readyMs: workpiece.readyMs === event.fromMs ? event.toMs : workpiece.readyMs };
}

function reopened(workpiece: Workpiece, event: EventOf<'stepsReopened'>, deviceId: string): Workpiece {
  const [first, ...others] = event.stepIds;
  const steps: Record<string, StepLife> = { ...workpiece.steps };
  for (const stepId of others) delete steps[stepId];
  const life = first === undefined ? undefined : steps[first];
  if (first !== undefined && life !== undefined) {
    if (life.startedMs === null || life.pins === null) delete steps[first];
    else steps[first] = { ...life, status: 'started', endedMs: null, endedBy: null, inferred: false, reason: null };
  }
  const endedMs = Object.values(steps).map((one) => one.endedMs ?? 0);
  const readyMs = endedMs.length === 0 ? workpiece.plannedStartMs : Math.max(...endedMs);
  return corrected({ ...workpiece, steps, readyMs, call: null, heldUntilMs: null }, deviceId, {
    what: 'where',
    stepId: first ?? null,
    from: others.at(-1) ?? '',
    to: first ?? '',
    atMs: event.atMs,
  });
}

function vesselsWith(held: readonly VesselsHeld[], vesselId: string, count: number): readonly VesselsHeld[] {
  const before = held.find((one) => one.vesselId === vesselId)?.count ?? 0;
  const others = held.filter((one) => one.vesselId !== vesselId);
  return before + count > 0 ? [...others, { vesselId, count: before + count }] : others;
}

/** What the event says of vessels and mixers, beside the workpiece. */
function withResources(state: FloorState, before: Workpiece, event: WorkEvent, recorded: RecordedEvent): FloorState {
  if (event.type === 'vesselsReturned') {
    const back = { vesselId: event.vesselId, count: event.count, freeMs: event.freeMs, commandId: recorded.commandId };
    return { ...state, vesselReturns: [...state.vesselReturns, back] };
  }
  if (event.type !== 'stepStarted') return state;
  const mixerId = event.resources.find((resource) => resource.kind === 'mixer')?.id;
  if (mixerId === undefined) return state;
  const cleaned = cleaningOver(state, mixerId, event.atMs);
  const kept = cleaned === null ? (state.residues[mixerId]?.allergens ?? []) : [];
  const allergens = [...new Set([...kept, ...allergensOf(state, before)])].sort();
  const blocked = cleaned === null ? state.blocked : state.blocked.filter((block) => block !== cleaned);
  return { ...state, blocked, residues: { ...state.residues, [mixerId]: { allergens, commandId: recorded.commandId } } };
}
