import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import type { Edge, FloorState, Workpiece } from './state.ts';

type GenealogyEvent = EventOf<'workpieceDivided' | 'loadsMade' | 'workpiecesJoined' | 'workpieceDrawn' | 'scrapPutBack' | 'fermentFed'>;

const TYPES: ReadonlySet<string> = new Set<GenealogyEvent['type']>([
  'workpieceDivided',
  'loadsMade',
  'workpiecesJoined',
  'workpieceDrawn',
  'scrapPutBack',
  'fermentFed',
]);

/** Whether the event is an edge of the genealogy. */
export function isGenealogyEvent(event: FloorEvent): event is GenealogyEvent {
  return TYPES.has(event.type);
}

/** What comes from what, with its amount. */
export function evolveGenealogy(state: FloorState, event: GenealogyEvent, recorded: RecordedEvent): FloorState {
  switch (event.type) {
    case 'workpieceDivided':
      return branched(state, event, 'cut', recorded.commandId);
    case 'loadsMade':
      return branched(state, event, 'load', recorded.commandId);
    case 'workpiecesJoined':
      return joined(state, event, recorded.commandId);
    case 'workpieceDrawn':
      return drawn(state, { kind: 'draw', fromId: event.fromWorkpieceId, toId: event.toWorkpieceId, grams: event.grams, atMs: event.atMs });
    case 'scrapPutBack':
      return drawn(state, {
        kind: 'putBack',
        fromId: event.fromWorkpieceId,
        toId: event.toWorkpieceId,
        grams: event.grams,
        atMs: event.atMs,
      });
    case 'fermentFed': {
      const pot = state.workpieces[event.workpieceId];
      if (pot === undefined) return state;
      const fed = { ...pot, grams: event.seedG + event.flourG + event.waterG };
      const edge: Edge = { kind: 'feed', fromId: pot.id, toId: pot.id, grams: event.flourG + event.waterG, atMs: event.atMs };
      return { ...state, workpieces: { ...state.workpieces, [pot.id]: fed }, edges: [...state.edges, edge] };
    }
    default:
      return unreachable(event);
  }
}

function branched(
  state: FloorState,
  event: EventOf<'workpieceDivided' | 'loadsMade'>,
  kind: 'cut' | 'load',
  commandId: string,
): FloorState {
  const parent = state.workpieces[event.workpieceId];
  if (parent === undefined) return state;
  const workpieces: Record<string, Workpiece> = { ...state.workpieces };
  const edges = [...state.edges];
  for (const child of event.children) {
    workpieces[child.workpieceId] = {
      ...parent,
      id: child.workpieceId,
      kind,
      tag: child.tag,
      productId: child.productId,
      productVersion: child.productVersion,
      parentId: parent.id,
      childIds: [],
      grams: child.grams,
      pieces: child.pieces,
      plannedStartMs: event.atMs,
      readyMs: event.atMs,
      cuts: [],
      steps: kind === 'load' ? parent.steps : {},
      mixerId: null,
      slotIds: [],
      call: null,
      heldUntilMs: null,
      finishedMs: null,
      ending: null,
      lastCommandId: null,
      lastDoneCommandId: null,
    };
    edges.push({
      kind: kind === 'cut' ? 'divide' : 'load',
      fromId: parent.id,
      toId: child.workpieceId,
      grams: child.grams,
      atMs: event.atMs,
    });
  }
  workpieces[parent.id] = {
    ...parent,
    childIds: [...parent.childIds, ...event.children.map((child) => child.workpieceId)],
    placeId: null,
    mixerId: null,
    call: null,
    heldUntilMs: null,
    finishedMs: event.atMs,
    ending: 'divided',
    lastCommandId: commandId,
    lastDoneCommandId: commandId,
  };
  return { ...state, workpieces, edges };
}

function joined(state: FloorState, event: EventOf<'workpiecesJoined'>, commandId: string): FloorState {
  const first = event.parents.map((parent) => state.workpieces[parent.workpieceId]).find((parent) => parent !== undefined);
  if (first === undefined) return state;
  const workpieces: Record<string, Workpiece> = { ...state.workpieces };
  const edges = [...state.edges];
  let grams = 0;
  for (const parent of event.parents) {
    const workpiece = workpieces[parent.workpieceId];
    if (workpiece === undefined) continue;
    grams += parent.grams;
    edges.push({ kind: 'join', fromId: parent.workpieceId, toId: event.workpieceId, grams: parent.grams, atMs: event.atMs });
    workpieces[parent.workpieceId] = {
      ...workpiece,
      childIds: [...workpiece.childIds, event.workpieceId],
      finishedMs: event.atMs,
      ending: 'divided',
      call: null,
      placeId: null,
      mixerId: null,
      lastCommandId: commandId,
      lastDoneCommandId: commandId,
    };
  }
  workpieces[event.workpieceId] = {
    ...first,
    id: event.workpieceId,
    tag: event.tag,
    grams,
    parentId: null,
    childIds: [],
    readyMs: event.atMs,
    call: null,
    heldUntilMs: null,
  };
  return { ...state, workpieces, edges };
}

function drawn(state: FloorState, edge: Edge): FloorState {
  const source = state.workpieces[edge.fromId];
  const workpieces =
    source === undefined
      ? state.workpieces
      : { ...state.workpieces, [source.id]: { ...source, grams: Math.max(0, source.grams - edge.grams) } };
  return { ...state, workpieces, edges: [...state.edges, edge] };
}
