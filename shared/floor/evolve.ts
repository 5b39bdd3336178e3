import { unreachable } from '../result.ts';
import { evolveBook, isBookEvent, isRecordedBookEvent, type RecordedBookEvent } from './evolve-book.ts';
import { evolveDocuments, isDocumentEvent } from './evolve-documents.ts';
import { evolvePlan, isPlanEvent } from './evolve-plan.ts';
import { evolveGenealogy, isGenealogyEvent } from './evolve-genealogy.ts';
import { evolveWork, isWorkEvent } from './evolve-work.ts';
import { deckCAt } from './deck-heat.ts';
import { evolveOvens, isOvenEvent } from './evolve-ovens.ts';
import { evolveAir, isAirEvent } from './evolve-air.ts';
import { evolveCalls, isCallEvent } from './evolve-calls.ts';
import { evolveSoundTest, isSoundTestEvent } from './evolve-sound-test.ts';
import { evolveWeighing, isWeighingEvent } from './evolve-weighing.ts';
import { forgetUndo, rememberForUndo } from './undo-memory.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import { prune } from './prune.ts';
import type { FloorState } from './state.ts';
import { shiftOpenInstants } from './shift.ts';

/**
 * The state after one more event. Pure; never fails on an event that a decider made. What an event says of a workpiece
 * that is no longer in the live state changes nothing.
 */
export function evolve(state: FloorState, recorded: RecordedEvent): FloorState {
  const remembered = rememberForUndo(state, recorded);
  const next = applyEvent(remembered, recorded.event, recorded);
  return { ...next, sequence: recorded.sequence };
}

/** The fold of several events. */
export function evolveAll(state: FloorState, events: readonly RecordedEvent[]): FloorState {
  let next = state;
  for (let index = 0; index < events.length;) {
    const run = bookRun(events, index);
    const recorded = events[index + Math.max(0, run.length - 1)];
    if (recorded === undefined) return next;
    next = run.length > 1 ? { ...evolveBook(next, run), sequence: recorded.sequence } : evolve(next, recorded);
    index += Math.max(1, run.length);
  }
  return next;
}

/** The events about the book that follow one another from an index on. */
function bookRun(events: readonly RecordedEvent[], from: number): readonly RecordedBookEvent[] {
  const run: RecordedBookEvent[] = [];
  for (let index = from; index < events.length; index += 1) {
    const recorded = events[index];
    if (recorded === undefined || !isRecordedBookEvent(recorded)) break;
    run.push(recorded);
  }
  return run;
}

function applyEvent(state: FloorState, event: FloorEvent, recorded: RecordedEvent): FloorState {
  if (isWorkEvent(event)) return pruneAfterEnding(evolveWork(state, event, recorded), event);
  if (isCallEvent(event)) return evolveCalls(state, event);
  if (isWeighingEvent(event)) return evolveWeighing(state, event, recorded);
  if (isSoundTestEvent(event)) return evolveSoundTest(state, event);
  if (isGenealogyEvent(event)) return pruneAfterEnding(evolveGenealogy(state, event, recorded), event);
  if (isBookEvent(event)) return evolveBook(state, [{ ...recorded, event }]);
  if (isOvenEvent(event)) return evolveOvens(state, event, recorded);
  if (isAirEvent(event)) return evolveAir(state, event, recorded);
  if (isPlanEvent(event)) return evolvePlan(state, event);
  if (isDocumentEvent(event)) return evolveDocuments(state, event);
  switch (event.type) {
    case 'commandUndone':
      return forgetUndo(state, event, recorded.deviceId);
    case 'clockAnchored':
      return { ...state, clock: { houseMs: event.houseMs, realMs: event.realMs, pace: event.pace } };
    case 'clockJumped':
      return shiftOpenInstants(state, event.byMs);
    case 'deckSet':
      return {
        ...state,
        deckC: { ...state.deckC, [event.deckId]: event.temperatureC },
        deckSets: {
          ...state.deckSets,
          [event.deckId]: { fromC: deckCAt(state, event.deckId, event.atMs) ?? event.temperatureC, sinceMs: event.atMs },
        },
      };
    case 'resourceBlocked':
      return { ...state, blocked: [...withoutResource(state, event.resource), event] };
    case 'resourceFreed':
      return freed(state, event);
    default:
      return unreachable(event);
  }
}

/** A mixer that was being cleaned is clean once it is freed. */
function freed(state: FloorState, event: EventOf<'resourceFreed'>): FloorState {
  const { kind, id } = event.resource;
  const wasCleaned = state.blocked.some((block) => block.resource.kind === kind && block.resource.id === id && block.why !== 'outOfOrder');
  const blocked = withoutResource(state, event.resource);
  if (kind !== 'mixer' || !wasCleaned) return { ...state, blocked };
  const { [id]: _cleaned, ...residues } = state.residues;
  return { ...state, blocked, residues };
}

function withoutResource(state: FloorState, resource: { readonly kind: string; readonly id: string }): FloorState['blocked'] {
  return state.blocked.filter((blocked) => blocked.resource.kind !== resource.kind || blocked.resource.id !== resource.id);
}

function pruneAfterEnding(state: FloorState, event: FloorEvent): FloorState {
  switch (event.type) {
    case 'workpieceFinished':
    case 'workpieceDiscarded':
    case 'workpieceDivided':
      return prune(state, event.atMs);
    default:
      return state;
  }
}
