import { isStronger } from './role.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import { lotsWithout } from './lots-used.ts';
import { cleaningOver } from './mixers.ts';
import { isSameResource } from './resources.ts';
import type { Call, FloorState, Residue, UndoEntry, Workpiece } from './state.ts';

/** Devices whose last command is remembered for undo; the one longest idle is forgotten first. */
const UNDO_DEVICES = 200;

/** The workpieces that an event touches, where undo can put them back; none where it cannot. */
function undoableWorkpieces(event: FloorEvent): readonly string[] {
  switch (event.type) {
    case 'stepStarted':
    case 'stepDone':
    case 'stepSkipped':
    case 'stepProgressed':
    case 'stepHandedOver':
    case 'stepHelped':
    case 'stepsReopened':
    case 'lossNamed':
    case 'ingredientAdded':
    case 'ingredientWeighed':
    case 'ingredientUnweighed':
    case 'batchRescaled':
    case 'waterTaken':
    case 'waterHeldBackUsed':
    case 'vesselsTaken':
    case 'vesselsReturned':
    case 'feedPlanned':
    case 'fermentFed':
    case 'moreTimeGiven':
    case 'promptAnswered':
    case 'workpieceHeld':
    case 'workpieceReleased':
    case 'workpieceMoved':
    case 'workpieceFinished':
    case 'workpieceDiscarded':
    case 'holdingDecided':
    case 'ovenLoaded':
    case 'ovenUnloaded':
    case 'loadMoved':
    case 'temperatureRead':
    case 'callHeard':
    case 'countCorrected':
    case 'tagCorrected':
    case 'timeCorrected':
      return [event.workpieceId];
    case 'workpieceDivided':
    case 'loadsMade':
      return [event.workpieceId, ...event.children.map((child) => child.workpieceId)];
    case 'workpiecesJoined':
      return [event.workpieceId, ...event.parents.map((parent) => parent.workpieceId)];
    case 'workpieceDrawn':
    case 'scrapPutBack':
      return [event.fromWorkpieceId, event.toWorkpieceId];
    default:
      return [];
  }
}

/** Whether undo can put back what an event changed: what it says of workpieces, not of days, decks and the kitchen. */
export function canBeUndone(event: FloorEvent): boolean {
  return undoableWorkpieces(event).length > 0;
}

/** The mixers of which an event changes what they have had in them. */
function mixersTouched(event: FloorEvent): readonly string[] {
  return event.type === 'stepStarted' ? event.resources.filter((resource) => resource.kind === 'mixer').map((resource) => resource.id) : [];
}

/** The cleanings that are over and done with once the event has taken their mixers. */
function cleaningsOver(state: FloorState, event: FloorEvent): UndoEntry['cleanedBefore'] {
  if (event.type !== 'stepStarted') return [];
  return mixersTouched(event).flatMap((mixerId) => cleaningOver(state, mixerId, event.atMs) ?? []);
}

/** A command weighs one line: it uses lots of one ingredient. */
function lotsBefore(state: FloorState, event: FloorEvent): UndoEntry['lotsBefore'] {
  if (event.type !== 'ingredientWeighed' || event.ingredientId === undefined || event.lotNumbers.length === 0) return {};
  return { [event.ingredientId]: { before: state.lotsUsed[event.ingredientId] ?? [], used: event.lotNumbers } };
}

/** Keeps the workpieces as they were before a device's last command. Its next command replaces them. */
export function rememberForUndo(state: FloorState, recorded: RecordedEvent): FloorState {
  const touched = undoableWorkpieces(recorded.event);
  if (touched.length === 0) return state;
  const existing = state.undo[recorded.deviceId];
  const entry: UndoEntry =
    existing?.commandId === recorded.commandId
      ? existing
      : { commandId: recorded.commandId, sequence: recorded.sequence, before: {}, residuesBefore: {}, cleanedBefore: [], lotsBefore: {} };
  const before: Record<string, Workpiece | null> = { ...entry.before };
  for (const workpieceId of touched) {
    if (!(workpieceId in before)) before[workpieceId] = state.workpieces[workpieceId] ?? null;
  }
  const residuesBefore: Record<string, Residue | null> = { ...entry.residuesBefore };
  for (const mixerId of mixersTouched(recorded.event)) {
    if (!(mixerId in residuesBefore)) residuesBefore[mixerId] = state.residues[mixerId] ?? null;
  }
  const cleanedBefore = [...entry.cleanedBefore, ...cleaningsOver(state, recorded.event)];
  const remembered: UndoEntry = {
    commandId: entry.commandId,
    sequence: recorded.sequence,
    before,
    residuesBefore,
    cleanedBefore,
    lotsBefore: { ...entry.lotsBefore, ...lotsBefore(state, recorded.event) },
  };
  return { ...state, undo: withoutIdlest({ ...state.undo, [recorded.deviceId]: remembered }) };
}

function withoutIdlest(undo: Readonly<Record<string, UndoEntry>>): Readonly<Record<string, UndoEntry>> {
  const entries = Object.entries(undo);
  if (entries.length <= UNDO_DEVICES) return undo;
  const idlest = entries.reduce((a, b) => (b[1].sequence < a[1].sequence ? b : a));
  return Object.fromEntries(entries.filter((entry) => entry !== idlest));
}

/** Puts the workpieces back as they were before the command that is undone, and forgets it. */
export function forgetUndo(state: FloorState, event: EventOf<'commandUndone'>, deviceId: string): FloorState {
  const entry = state.undo[deviceId];
  if (entry === undefined || entry.commandId !== event.undoneCommandId) return state;
  const workpieces: Record<string, Workpiece> = { ...state.workpieces };
  for (const [workpieceId, before] of Object.entries(entry.before)) {
    if (before === null) {
      delete workpieces[workpieceId];
    } else {
      workpieces[workpieceId] = { ...before, call: callToKeep(before.call, workpieces[workpieceId]?.call ?? null) };
    }
  }
  const { [deviceId]: _undone, ...undo } = state.undo;
  const isUndone = (fact: { readonly commandId: string }): boolean => fact.commandId === entry.commandId;
  return {
    ...state,
    workpieces,
    undo,
    edges: state.edges.filter((edge) => !isUndone(edge)),
    vesselReturns: state.vesselReturns.filter((back) => !isUndone(back)),
    residues: residuesBack(state, entry),
    lotsUsed: lotsBack(state, entry),
    rises: samplesBack(state.rises, isUndone),
    drifts: samplesBack(state.drifts, isUndone),
    ripeness: samplesBack(state.ripeness, isUndone),
    slotHeat: samplesBack(state.slotHeat, isUndone),
    blocked: [...entry.cleanedBefore.filter((block) => !isBlocked(state, block.resource)), ...state.blocked],
  };
}

/** Whether the mixer is being cleaned again, or out of order, since: then that is what counts. */
function isBlocked(state: FloorState, resource: FloorState['blocked'][number]['resource']): boolean {
  return state.blocked.some((block) => isSameResource(block.resource, resource));
}

/** What the undone reading had taught is not so. */
function samplesBack<Sample>(
  all: Readonly<Record<string, readonly Sample[]>>,
  isUndone: (sample: Sample) => boolean,
): Readonly<Record<string, readonly Sample[]>> {
  const kept = Object.entries(all).map(([key, samples]) => [key, samples.filter((sample) => !isUndone(sample))] as const);
  return Object.fromEntries(kept.filter(([, samples]) => samples.length > 0));
}

function lotsBack(state: FloorState, entry: UndoEntry): FloorState['lotsUsed'] {
  const lotsUsed: Record<string, readonly string[]> = { ...state.lotsUsed };
  for (const [ingredientId, known] of Object.entries(entry.lotsBefore)) {
    const lots = lotsWithout(lotsUsed[ingredientId] ?? [], known);
    if (lots.length === 0) delete lotsUsed[ingredientId];
    else lotsUsed[ingredientId] = lots;
  }
  return lotsUsed;
}

function residuesBack(state: FloorState, entry: UndoEntry): FloorState['residues'] {
  const residues: Record<string, Residue> = { ...state.residues };
  for (const [mixerId, before] of Object.entries(entry.residuesBefore)) {
    // Another dough has been in it since, or it was cleaned: what is there now is right.
    if (residues[mixerId]?.commandId !== entry.commandId) continue;
    if (before === null) delete residues[mixerId];
    else residues[mixerId] = before;
  }
  return residues;
}

/** A call that has become stronger meanwhile was raised and stays raised: that it was heard is all that can be taken back of it. */
function callToKeep(before: Call | null, present: Call | null): Call | null {
  if (before === null || present === null || before.stepId !== present.stepId) return before;
  return isStronger(present.level, before.level) ? present : before;
}
