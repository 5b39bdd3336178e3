import { unreachable } from '../result.ts';
import { broughtWith } from './contents.ts';
import type { EventOf, FloorEvent, RecordedEvent, VesselsHeld } from './events.ts';
import { feedsAhead } from './planned-feeds.ts';
import { versionKey, type Edge, type FloorState, type PlannedCut, type Workpiece } from './state.ts';

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
  const next = withEdges(state, event, recorded);
  if (state.jumpedMs === 0) return next;
  const before = state.edges.length;
  return { ...next, edges: next.edges.map((edge, index) => (index < before ? edge : { ...edge, jumpedMs: state.jumpedMs })) };
}

function withEdges(state: FloorState, event: GenealogyEvent, recorded: RecordedEvent): FloorState {
  switch (event.type) {
    case 'workpieceDivided':
      return branched(state, event, 'cut', recorded.commandId);
    case 'loadsMade':
      return branched(state, event, 'load', recorded.commandId);
    case 'workpiecesJoined':
      return joined(state, event, recorded.commandId);
    case 'workpieceDrawn':
      return drawn(state, event, 'draw', event.isExtra === true, recorded.commandId);
    case 'scrapPutBack':
      return drawn(state, event, 'putBack', true, recorded.commandId);
    case 'fermentFed':
      return fed(state, event, recorded.commandId);
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
  const isDivide = event.type === 'workpieceDivided';
  const workpieces: Record<string, Workpiece> = { ...state.workpieces };
  const edges = [...state.edges];
  for (const child of event.children) {
    const vessels: readonly VesselsHeld[] = 'vessels' in child ? child.vessels : [];
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
      scaledToG: child.grams,
      pieces: child.pieces,
      plannedPieces: isDivide ? (parent.cuts.find((cut) => cut.productId === child.productId)?.pieces ?? child.pieces) : child.pieces,
      scrapG: 0,
      plannedStartMs: event.atMs,
      readyMs: isDivide ? event.atMs : parent.readyMs,
      cuts: [],
      steps: kind === 'load' ? parent.steps : {},
      mixerId: null,
      bowlId: null,
      vessels,
      slotIds: [],
      corrections: [],
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
      commandId,
    });
  }
  const childIds = [...parent.childIds, ...event.children.map((child) => child.workpieceId)];
  if (event.type === 'loadsMade' && event.restPieces > 0) {
    workpieces[parent.id] = {
      ...parent,
      childIds,
      pieces: event.restPieces,
      plannedPieces: event.restPieces,
      grams: event.restG,
      vessels: vesselsLeft(parent.vessels, event),
      lastCommandId: commandId,
    };
    return { ...state, workpieces, edges };
  }
  workpieces[parent.id] = {
    ...parent,
    childIds,
    scrapG: parent.scrapG + (isDivide ? event.lossG : 0),
    vessels: [],
    bowlId: null,
    slotIds: [],
    placeId: null,
    stays: leftFloor(parent, event.atMs),
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
  const parents = event.parents.map((parent) => state.workpieces[parent.workpieceId]).filter((parent) => parent !== undefined);
  const [first] = parents;
  if (first === undefined) return state;
  const workpieces: Record<string, Workpiece> = { ...state.workpieces };
  const edges = [...state.edges];
  let grams = 0;
  for (const parent of event.parents) {
    const workpiece = workpieces[parent.workpieceId];
    if (workpiece === undefined) continue;
    grams += parent.grams;
    edges.push({ kind: 'join', fromId: parent.workpieceId, toId: event.workpieceId, grams: parent.grams, atMs: event.atMs, commandId });
    workpieces[parent.workpieceId] = {
      ...workpiece,
      childIds: [...workpiece.childIds, event.workpieceId],
      finishedMs: event.atMs,
      ending: 'divided',
      call: null,
      placeId: null,
      stays: leftFloor(workpiece, event.atMs),
      mixerId: null,
      bowlId: null,
      vessels: [],
      heldUntilMs: null,
      lastCommandId: commandId,
      lastDoneCommandId: commandId,
    };
  }
  workpieces[event.workpieceId] = {
    ...first,
    id: event.workpieceId,
    tag: event.tag,
    grams,
    scaledToG: parents.reduce((sum, parent) => sum + parent.scaledToG, 0),
    cuts: cutsTogether(parents),
    pieces: sumOrNull(parents.map((parent) => parent.pieces)),
    plannedPieces: sumOrNull(parents.map((parent) => parent.plannedPieces)),
    scrapG: 0,
    vessels: [],
    broughtIn: parents.reduce(
      (before, parent) => broughtWith(before, parent.broughtIn.allergens, parent.broughtIn.lotNumbers),
      first.broughtIn,
    ),
    parentId: null,
    childIds: [],
    corrections: [],
    // Nobody has decided on the whole.
    holdingDecisions: [],
    call: null,
    heldUntilMs: null,
    lastCommandId: null,
    lastDoneCommandId: null,
  };
  return { ...state, workpieces, edges };
}

/** Where it stood until it went on as something else. */
function leftFloor({ stays }: Workpiece, atMs: number): Workpiece['stays'] {
  return (stays.at(-1)?.placeId ?? null) === null ? stays : [...stays, { placeId: null, sinceMs: atMs }];
}

function cutsTogether(parents: readonly Workpiece[]): readonly PlannedCut[] {
  const cuts = new Map<string, PlannedCut>();
  for (const cut of parents.flatMap((parent) => parent.cuts)) {
    const key = versionKey(cut.productId, cut.productVersion);
    const before = cuts.get(key);
    cuts.set(key, before === undefined ? cut : { ...cut, pieces: before.pieces + cut.pieces, grams: before.grams + cut.grams });
  }
  return [...cuts.values()];
}

function sumOrNull(numbers: readonly (number | null)[]): number | null {
  return numbers.reduce((sum, number) => (sum === null || number === null ? null : sum + number));
}

function vesselsLeft(held: readonly VesselsHeld[], event: EventOf<'loadsMade'>): readonly VesselsHeld[] {
  const gone = event.children.flatMap((child) => child.vessels);
  return held
    .map((one) => ({
      ...one,
      count: one.count - gone.reduce((sum, taken) => sum + (taken.vesselId === one.vesselId ? taken.count : 0), 0),
    }))
    .filter((one) => one.count > 0);
}

function drawn(
  state: FloorState,
  event: EventOf<'workpieceDrawn' | 'scrapPutBack'>,
  kind: 'draw' | 'putBack',
  isExtra: boolean,
  commandId: string,
): FloorState {
  const workpieces: Record<string, Workpiece> = { ...state.workpieces };
  const source = workpieces[event.fromWorkpieceId];
  if (source !== undefined) workpieces[source.id] = { ...withLess(source, event), lastCommandId: commandId };
  const target = workpieces[event.toWorkpieceId];
  if (target !== undefined) {
    workpieces[target.id] = {
      ...target,
      grams: target.grams + (isExtra ? event.grams : 0),
      broughtIn: broughtWith(target.broughtIn, event.allergens, event.lotNumbers),
      lastCommandId: commandId,
    };
  }
  const edge: Edge = { kind, fromId: event.fromWorkpieceId, toId: event.toWorkpieceId, grams: event.grams, atMs: event.atMs, commandId };
  return { ...state, workpieces, edges: [...state.edges, edge] };
}

/** What is put back is the scrap that lay beside it first, then the dough itself. */
function withLess(source: Workpiece, event: EventOf<'workpieceDrawn' | 'scrapPutBack'>): Workpiece {
  const fromScrapG = event.type === 'scrapPutBack' ? Math.min(source.scrapG, event.grams) : 0;
  return { ...source, scrapG: source.scrapG - fromScrapG, grams: Math.max(0, source.grams - (event.grams - fromScrapG)) };
}

/** A pot that was fed begins its way anew; what it held beside the seed is gone. */
function fed(state: FloorState, event: EventOf<'fermentFed'>, commandId: string): FloorState {
  const pot = state.workpieces[event.workpieceId];
  if (pot === undefined) return state;
  const after: Workpiece = {
    ...pot,
    grams: event.seedG + event.flourG + event.waterG,
    steps: {},
    // The next feed is weighed anew.
    weighed: {},
    call: null,
    heldUntilMs: null,
    stock: pot.stock === null ? null : { ...pot.stock, fedMs: event.atMs, plannedFeeds: feedsAhead(pot.stock, event.atMs) },
    lastCommandId: commandId,
  };
  const edge: Edge = {
    kind: 'feed',
    fromId: pot.id,
    toId: pot.id,
    grams: event.flourG + event.waterG,
    atMs: event.atMs,
    commandId,
  };
  return { ...state, workpieces: { ...state.workpieces, [pot.id]: after }, edges: [...state.edges, edge] };
}
