import type { Formula } from '../../documents/formula.ts';
import { formulaOf } from '../../floor/contents.ts';
import { wantedG } from '../../floor/feed-by-formula.ts';
import { feedsAhead, numberedFeeds } from '../../floor/planned-feeds.ts';
import { versionKey, type FloorState, type Workpiece } from '../../floor/state.ts';
import { positionOf, productOf, wayOf } from '../../floor/way.ts';
import type { BuildContext } from './context.ts';
import type { Thread, ThreadPlace } from './thread.ts';
import { addCuts, withLoads, type CutBelow } from './threads-below.ts';

/** Numbers of families: everything that came of one batch, and the preps that go into it, are sought together. */
export class Families {
  private readonly numbers = new Map<string, number>();

  /** The number of the family that a batch, by its id or key, is the head of. */
  of(headId: string): number {
    const known = this.numbers.get(headId);
    if (known !== undefined) return known;
    this.numbers.set(headId, this.numbers.size);
    return this.numbers.size - 1;
  }

  get count(): number {
    return this.numbers.size;
  }
}

/** The threads of everything that is on the floor and not finished, pots with each of their feeds that are planned. */
export function floorThreads(context: BuildContext, families: Families): readonly Thread[] {
  const { state } = context;
  return Object.values(state.workpieces).flatMap((workpiece) => {
    const formula = workpiece.finishedMs === null ? formulaOf(state, workpiece) : null;
    return formula === null ? [] : threadsOf(context, workpiece, formula, families);
  });
}

function threadsOf(context: BuildContext, workpiece: Workpiece, formula: Formula, families: Families): readonly Thread[] {
  const { state } = context;
  const head = headOf(state, workpiece);
  const family = families.of(workpiece.serves?.workpieceId ?? head.id);
  const thread = withLoads(asThread(context, workpiece, formula, family), loadsMade(state, workpiece));
  if (thread.children.length === 0 && thread.product === null) addCuts(thread, cutsBelow(state, workpiece));
  return [thread, ...plannedFeeds(state, thread, workpiece, families)];
}

function asThread(context: BuildContext, workpiece: Workpiece, formula: Formula, batch: number): Thread {
  const { state } = context;
  const hasBegun = Object.keys(workpiece.steps).length > 0;
  const kind = formula.kind;
  const grams = fedAgainSinceMs(state, workpiece) === null ? workpiece.grams : wantedG(workpiece, formula);
  return {
    place: { batchKey: workpiece.id, workpieceId: workpiece.id, cut: undefined, load: undefined },
    kind,
    batch,
    tag: workpiece.tag,
    formula,
    product: productOf(state, workpiece),
    pieces: workpiece.pieces,
    grams,
    scaledToG: workpiece.stock === null ? workpiece.scaledToG : grams,
    allergens: withBrought(context, workpiece, formula),
    steps: wayOf(state, workpiece),
    lives: livesOf(state, workpiece),
    workpiece,
    serviceDate: workpiece.serviceDate,
    startMs: hasBegun ? null : workpiece.plannedStartMs,
    notBeforeMs: null,
    shaped: 1,
    serves: workpiece.serves,
    parent: null,
    children: [],
  };
}

/** What has become of its steps, those ahead left out: a pot that is fed again has ripened before, and has it before it again. */
function livesOf(state: FloorState, workpiece: Workpiece): Thread['lives'] {
  if (workpiece.stock === null) return workpiece.steps;
  const way = wayOf(state, workpiece);
  const behind = new Set(way.slice(0, positionOf(way, workpiece) + 1).map(({ id }) => id));
  return Object.fromEntries(Object.entries(workpiece.steps).filter(([id]) => behind.has(id)));
}

/** Since when somebody has been feeding a pot that was fed before; null where nobody is. */
function fedAgainSinceMs(state: FloorState, workpiece: Workpiece): number | null {
  if ((workpiece.stock?.fedMs ?? null) === null) return null;
  const way = wayOf(state, workpiece);
  const index = positionOf(way, workpiece);
  return index >= way.length - 1 ? null : (workpiece.steps[way[index]?.id ?? '']?.startedMs ?? null);
}

function withBrought(context: BuildContext, workpiece: Workpiece, formula: Formula): Thread['allergens'] {
  const written = context.allergensOf(formula);
  const brought = workpiece.broughtIn.allergens;
  return brought.length === 0 ? written : [...new Set([...written, ...brought])].sort();
}

/** The batch that a cut or load came of; a dough joined of several is the head of its own. */
function headOf(state: FloorState, workpiece: Workpiece): Workpiece {
  let head = workpiece;
  for (let parent = parentOf(state, head); parent !== undefined; parent = parentOf(state, head)) head = parent;
  return head;
}

function parentOf(state: FloorState, workpiece: Workpiece): Workpiece | undefined {
  return workpiece.parentId === null ? undefined : state.workpieces[workpiece.parentId];
}

function loadsMade(state: FloorState, workpiece: Workpiece): number {
  return workpiece.childIds.filter((id) => state.workpieces[id]?.kind === 'load').length;
}

function cutsBelow(state: FloorState, workpiece: Workpiece): readonly CutBelow[] {
  return workpiece.cuts.flatMap(({ productId, productVersion, pieces, grams }) => {
    const product = state.products[versionKey(productId, productVersion)];
    return product === undefined ? [] : [{ product, pieces, grams }];
  });
}

/** A thread for each feed of a pot that is still to come. */
function plannedFeeds(state: FloorState, pot: Thread, workpiece: Workpiece, families: Families): readonly Thread[] {
  const { stock } = workpiece;
  if (stock === null) return [];
  const sinceMs = fedAgainSinceMs(state, workpiece);
  const ahead = sinceMs === null ? stock.plannedFeeds : feedsAhead(stock, sinceMs);
  return numberedFeeds(ahead).map(({ feedMs, grams, number }): Thread => {
    const place: ThreadPlace = { ...pot.place, load: number };
    const batch = families.of(`${workpiece.id} ${feedMs}`);
    return { ...pot, place, batch, grams, scaledToG: grams, lives: {}, workpiece: null, startMs: feedMs, children: [] };
  });
}
