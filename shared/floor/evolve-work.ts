import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import type { FloorState, StepLife, Workpiece } from './state.ts';
import { wayOf } from './way.ts';

type WorkEvent = EventOf<
  | 'stepStarted'
  | 'stepProgressed'
  | 'stepHandedOver'
  | 'stepDone'
  | 'stepSkipped'
  | 'moreTimeGiven'
  | 'workpieceHeld'
  | 'workpieceReleased'
  | 'workpieceMoved'
  | 'workpieceFinished'
  | 'workpieceDiscarded'
  | 'ovenLoaded'
  | 'ovenUnloaded'
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
  'stepDone',
  'stepSkipped',
  'moreTimeGiven',
  'workpieceHeld',
  'workpieceReleased',
  'workpieceMoved',
  'workpieceFinished',
  'workpieceDiscarded',
  'ovenLoaded',
  'ovenUnloaded',
  'temperatureRead',
  'ingredientAdded',
  'waterHeldBackUsed',
  'vesselsTaken',
  'vesselsReturned',
  'timeCorrected',
  'countCorrected',
  'tagCorrected',
]);

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
  return { ...state, workpieces: { ...state.workpieces, [workpiece.id]: changed } };
}

function workOn(state: FloorState, workpiece: Workpiece, event: WorkEvent, recorded: RecordedEvent): Workpiece {
  switch (event.type) {
    case 'stepStarted':
      return started(workpiece, event, recorded.deviceId);
    case 'stepDone':
      return { ...ended(state, workpiece, event, recorded.deviceId, 'done'), lastDoneCommandId: recorded.commandId };
    case 'stepSkipped':
      return { ...ended(state, workpiece, event, recorded.deviceId, 'skipped'), lastDoneCommandId: recorded.commandId };
    case 'stepProgressed':
      return withLife(workpiece, event.stepId, (life) => ({ ...life, piecesDone: event.piecesDone }));
    case 'stepHandedOver':
      return withLife(workpiece, event.stepId, (life) => ({ ...life, stationId: event.toStationId }));
    case 'moreTimeGiven':
      return moreTime(workpiece, event);
    case 'workpieceHeld':
      return { ...workpiece, heldUntilMs: event.untilMs, call: null };
    case 'workpieceReleased':
      return { ...workpiece, heldUntilMs: null };
    case 'workpieceMoved':
      return { ...workpiece, placeId: event.placeId };
    case 'workpieceFinished':
      return { ...workpiece, finishedMs: event.atMs, ending: 'finished', ...offTheFloor() };
    case 'workpieceDiscarded':
      return { ...workpiece, finishedMs: event.atMs, ending: 'discarded', lastDoneCommandId: recorded.commandId, ...offTheFloor() };
    case 'ovenLoaded':
      return { ...workpiece, slotIds: event.slotIds, placeId: null };
    case 'ovenUnloaded':
      return { ...workpiece, slotIds: workpiece.slotIds.filter((slotId) => !event.slotIds.includes(slotId)) };
    case 'temperatureRead': {
      const reading = { where: event.where, celsius: event.celsius, atMs: event.atMs };
      return { ...workpiece, readings: [...workpiece.readings, reading].slice(-READINGS_KEPT) };
    }
    case 'timeCorrected':
      return withLife(workpiece, event.stepId, (life) =>
        event.edge === 'start' ? { ...life, startedMs: event.toMs } : { ...life, endedMs: event.toMs },
      );
    case 'countCorrected':
      return { ...workpiece, pieces: event.toPieces };
    case 'tagCorrected':
      return { ...workpiece, tag: event.toTag };
    case 'ingredientAdded':
    case 'waterHeldBackUsed':
    case 'vesselsTaken':
    case 'vesselsReturned':
      // Facts for the record; the live state does not need them yet.
      return workpiece;
    default:
      return unreachable(event);
  }
}

function offTheFloor(): Pick<Workpiece, 'placeId' | 'mixerId' | 'slotIds' | 'call' | 'heldUntilMs'> {
  return { placeId: null, mixerId: null, slotIds: [], call: null, heldUntilMs: null };
}

function withLife(workpiece: Workpiece, stepId: string, change: (life: StepLife) => StepLife): Workpiece {
  const life = workpiece.steps[stepId];
  return life === undefined ? workpiece : { ...workpiece, steps: { ...workpiece.steps, [stepId]: change(life) } };
}

function started(workpiece: Workpiece, event: EventOf<'stepStarted'>, deviceId: string): Workpiece {
  const life: StepLife = {
    status: 'started',
    startedMs: event.atMs,
    endedMs: null,
    startedBy: deviceId,
    endedBy: null,
    stationId: event.stationId ?? null,
    moreMin: 0,
    pins: event.pins,
    piecesDone: null,
    inferred: false,
    reason: null,
  };
  const taken = (kind: string): string | null => event.resources.find((resource) => resource.kind === kind)?.id ?? null;
  return {
    ...workpiece,
    steps: { ...workpiece.steps, [event.stepId]: life },
    placeId: taken('restPlace') ?? workpiece.placeId,
    mixerId: taken('mixer') ?? workpiece.mixerId,
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
    moreMin: before?.moreMin ?? 0,
    pins: before?.pins ?? null,
    piecesDone: (event.type === 'stepDone' ? event.piecesDone : undefined) ?? before?.piecesDone ?? null,
    inferred: event.type === 'stepDone' && event.inferred === true,
    reason: event.type === 'stepSkipped' ? event.reason : null,
  };
  const way = wayOf(state, workpiece);
  const next = way[way.findIndex((step) => step.id === event.stepId) + 1];
  const keepsMixer = next?.claims.some((claim) => claim.kind === 'mixer') ?? false;
  return {
    ...workpiece,
    steps: { ...workpiece.steps, [event.stepId]: life },
    readyMs: event.atMs,
    mixerId: keepsMixer ? workpiece.mixerId : null,
    call: null,
    heldUntilMs: null,
  };
}

function moreTime(workpiece: Workpiece, event: EventOf<'moreTimeGiven'>): Workpiece {
  const eased: Workpiece = { ...workpiece, call: null, heldUntilMs: null };
  if (workpiece.steps[event.stepId] === undefined) return { ...eased, readyMs: workpiece.readyMs + event.minutes * 60_000 };
  return withLife(eased, event.stepId, (life) => ({ ...life, moreMin: life.moreMin + event.minutes }));
}
