import type { FloorEvent } from '../../../shared/floor/events.ts';
import type { FloorState, StepLife, Workpiece } from '../../../shared/floor/state.ts';

/**
 * What a floor comes to, whatever order its facts came in: how far every dough is, what it weighs and holds. Which of
 * two free slots, mixers or tags came to which of two doughs is left out: the first tap has the choice.
 */
export function gist(state: FloorState): unknown {
  return {
    workpieces: Object.fromEntries(Object.entries(state.workpieces).map(([id, workpiece]) => [id, gistOf(workpiece)])),
    edges: state.edges.map(({ kind, fromId, toId, grams }) => `${kind} ${fromId} ${toId} ${tenths(grams)}`).sort(),
    vesselsBack: counted(state.vesselReturns),
    blocked: state.blocked.map(({ resource, why, untilMs }) => `${resource.kind} ${resource.id} ${why} ${untilMs ?? ''}`).sort(),
    deckC: state.deckC,
    openDates: [...state.openDates].sort(),
    documents: [state.kitchen, state.house],
    rises: Object.entries(state.rises)
      .flatMap(([mixerId, samples]) => samples.map(({ workpieceId, riseK }) => `${mixerId} ${workpieceId} ${riseK}`))
      .sort(),
  };
}

function gistOf({ vessels, slotIds, mixerId, bowlId, ...workpiece }: Workpiece): unknown {
  const { kind, grams, scrapG, pieces, ending, placeId, productId, heldUntilMs, stock, broughtIn } = workpiece;
  return {
    kind,
    pieces,
    ending,
    placeId,
    productId,
    heldUntilMs,
    stock,
    allergens: broughtIn.allergens,
    steps: Object.fromEntries(Object.entries(workpiece.steps).map(([id, life]) => [id, lifeOf(life)])),
    childIds: [...workpiece.childIds].sort(),
    weight: [tenths(grams), tenths(scrapG), tenths(workpiece.scaledToG)],
    weighed: Object.fromEntries(Object.entries(workpiece.weighed).map(([line, said]) => [line, [said.grams, said.lotNumbers]])),
    water: workpiece.water,
    holds: [counted(vessels), slotIds.length, mixerId !== null, bowlId !== null],
    readings: workpiece.readings.map(({ celsius }) => celsius).sort((a, b) => a - b),
  };
}

function lifeOf({ status, startedMs, endedMs, moreMin, piecesDone, helperIds, stationId }: StepLife): unknown {
  return { status, startedMs, endedMs, moreMin, piecesDone, stationId, helperIds: [...helperIds].sort() };
}

function tenths(grams: number): number {
  return Math.round(grams * 10);
}

function counted(vessels: readonly { readonly vesselId: string; readonly count: number }[]): readonly string[] {
  return vessels.map(({ vesselId, count }) => `${count} ${vesselId}`).sort();
}

/** What a fact is about: doughs, and what of the kitchen it blocks, frees or sets. */
export function subjectsOf(event: FloorEvent): readonly string[] {
  switch (event.type) {
    case 'workpieceDivided':
    case 'loadsMade':
      return [event.workpieceId, ...event.children.map((child) => child.workpieceId)];
    case 'workpiecesJoined':
      return [event.workpieceId, ...event.parents.map((parent) => parent.workpieceId)];
    case 'workpieceDrawn':
    case 'scrapPutBack':
      return [event.fromWorkpieceId, event.toWorkpieceId];
    case 'resourceBlocked':
    case 'resourceFreed':
      return [`${event.resource.kind} ${event.resource.id}`];
    case 'deckSet':
      return [`deck ${event.deckId}`];
    default:
      return 'workpieceId' in event ? [event.workpieceId] : [];
  }
}
