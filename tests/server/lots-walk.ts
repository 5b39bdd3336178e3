import type { FloorEvent, RecordedEvent } from '../../shared/floor/events.ts';

/** Feeds of pots since each lot came in, the least, by `ingredient lot`. */
type Contents = ReadonlyMap<string, number>;

interface Held {
  /** Lines of the weigh-out since the last feed. */
  readonly lines: Map<string, readonly string[]>;
  readonly rest: Map<string, number>;
  /** What left it. */
  readonly passed: Set<string>;
}

/** What became of lots, as a plain walk over the events says: who holds what at the end, and who passed on what. */
export interface LotsWalk {
  readonly holds: ReadonlyMap<string, Contents>;
  readonly passed: ReadonlyMap<string, ReadonlySet<string>>;
  /** For the products of days: what each workpiece is, and what became of it. */
  readonly pieces: ReadonlyMap<string, WalkedPiece>;
}

export interface WalkedPiece {
  readonly product: string | null;
  readonly serviceDate: string;
  readonly partOf: string | null;
  /** Nothing of it is left but what it was divided, loaded or joined into. */
  readonly isDivided: boolean;
}

export function keyOf(ingredientId: string, lot: string): string {
  return `${ingredientId} ${lot}`;
}

/**
 * Walks through events one by one with the contents of every workpiece in hand. It knows nothing of rows, edges and indexes, and nothing of
 * undo: what was undone is left out from the beginning.
 */
export function walkLots(recorded: readonly RecordedEvent[]): LotsWalk {
  const undone = new Set(recorded.flatMap(({ event }) => (event.type === 'commandUndone' ? [event.undoneCommandId] : [])));
  const held = new Map<string, Held>();
  const pieces = new Map<string, WalkedPiece>();
  const of = (id: string): Held => {
    const known = held.get(id) ?? { lines: new Map(), rest: new Map(), passed: new Set() };
    held.set(id, known);
    return known;
  };
  for (const { event, commandId } of recorded) {
    if (undone.has(commandId)) continue;
    step(event, of);
    name(event, pieces);
  }
  // What was weighed into a dough that another device's undo took away again is in nothing.
  const there = [...held].filter(([id]) => pieces.has(id));
  return {
    holds: new Map(there.map(([id, one]) => [id, contents(one)])),
    passed: new Map(there.map(([id, { passed }]) => [id, passed])),
    pieces,
  };
}

function contents({ lines, rest }: Held): Contents {
  const all = new Map(rest);
  for (const lots of lines.values()) for (const lot of lots) all.set(lot, 0);
  return all;
}

function step(event: FloorEvent, of: (id: string) => Held): void {
  const pour = (fromId: string, toId: string): void => {
    const [from, to] = [of(fromId), of(toId)];
    for (const [lot, feeds] of contents(from)) {
      from.passed.add(lot);
      to.rest.set(lot, Math.min(feeds, to.rest.get(lot) ?? feeds));
    }
  };
  switch (event.type) {
    case 'ingredientWeighed': {
      const { ingredientId } = event;
      const lots = ingredientId === undefined ? [] : event.lotNumbers.map((lot) => keyOf(ingredientId, lot));
      of(event.workpieceId).lines.set(event.lineId, lots);
      return;
    }
    case 'ingredientUnweighed':
      of(event.workpieceId).lines.delete(event.lineId);
      return;
    case 'ingredientAdded':
      if (event.lotNumber !== undefined) of(event.workpieceId).rest.set(keyOf(event.ingredientId, event.lotNumber), 0);
      return;
    case 'fermentFed': {
      const pot = of(event.workpieceId);
      for (const [lot, feeds] of pot.rest) pot.rest.set(lot, feeds + 1);
      for (const lots of pot.lines.values()) for (const lot of lots) pot.rest.set(lot, 0);
      pot.lines.clear();
      return;
    }
    case 'workpieceDrawn':
    case 'scrapPutBack':
      pour(event.fromWorkpieceId, event.toWorkpieceId);
      return;
    case 'workpieceDivided':
    case 'loadsMade':
      for (const child of event.children) pour(event.workpieceId, child.workpieceId);
      return;
    case 'workpiecesJoined':
      for (const parent of event.parents) pour(parent.workpieceId, event.workpieceId);
      return;
    default:
  }
}

function name(event: FloorEvent, pieces: Map<string, WalkedPiece>): void {
  const divided = (id: string): void => {
    const piece = pieces.get(id);
    if (piece !== undefined) pieces.set(id, { ...piece, isDivided: true });
  };
  switch (event.type) {
    case 'workpiecePlanned': {
      const [only, ...others] = event.cuts;
      const product = others.length === 0 ? (only?.productId ?? null) : null;
      pieces.set(event.workpieceId, { product, serviceDate: event.serviceDate, partOf: null, isDivided: false });
      return;
    }
    case 'workpieceDivided':
    case 'loadsMade':
      for (const { workpieceId, productId } of event.children) {
        const serviceDate = pieces.get(event.workpieceId)?.serviceDate ?? '';
        pieces.set(workpieceId, { product: productId, serviceDate, partOf: event.workpieceId, isDivided: false });
      }
      if (event.type === 'workpieceDivided' || event.restPieces === 0) divided(event.workpieceId);
      return;
    case 'workpiecesJoined': {
      const first = pieces.get(event.parents[0]?.workpieceId ?? '');
      if (first !== undefined) pieces.set(event.workpieceId, { ...first, partOf: null, isDivided: false });
      for (const { workpieceId } of event.parents) divided(workpieceId);
      return;
    }
    default:
  }
}
