import type { Product } from '../../shared/documents/formula.ts';
import type { Step } from '../../shared/documents/method.ts';
import { cutTag } from '../../shared/floor/projection.ts';
import { versionKey, type FloorState, type Workpiece } from '../../shared/floor/state.ts';
import { nameOf, productOf, wayOf } from '../../shared/floor/way.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import type { Bar, DoughLine, StepPlace } from './sheet-bar.ts';
import { lineBars, type LineContext } from './sheet-line-bars.ts';
import { inForce, movedFrom, pinsByPlace, proposedSteps, type SheetProposal } from './sheet-places.ts';

/** What a line is made from, whether its dough is on the floor, is still to be divided off, or is only proposed. */
export interface LineOf {
  readonly ownerId: string;
  readonly cut: number | null;
  readonly load: number | null;
  readonly rootKey: string;
  readonly tag: string;
  readonly name: string;
  readonly pieces: number | null;
  readonly depth: number;
  readonly productIds: readonly string[];
  readonly way: readonly Step[];
  /** Null for what is not on the floor yet. */
  readonly workpiece: Workpiece | null;
}

/**
 * Every dough of the day with its cuts and loads, each with its steps: what was done, what runs, what the plan has ahead
 * of it, or a proposal. Doughs without a plan go on by their target times. `serviceDate` leaves out what is finished and
 * of another day; null keeps it.
 */
export function doughLines(
  state: FloorState,
  proposal: SheetProposal | null,
  nowMs: number,
  serviceDate: string | null,
): readonly DoughLine[] {
  const kept = inForce(state);
  const ahead = proposal === null ? kept : proposedSteps(state, proposal);
  const context: LineContext = {
    state,
    nowMs,
    kept,
    ahead,
    parts: partsStillToCome(ahead),
    isTried: proposal !== null,
    moved: movedFrom(state),
    pins: pinsByPlace(state, proposal),
  };
  const planned = new Set([...context.ahead.values()].map(({ place }) => rootOf(state, place.ownerId)));
  const lines = [...floorLines(state, context, serviceDate), ...(proposal === null ? [] : proposedLines(state, proposal, context))];
  const byOwner = new Map<string, LineOf[]>();
  for (const line of lines) byOwner.set(line.ownerId, [...(byOwner.get(line.ownerId) ?? []), line]);
  const drawn = new Map<LineOf, readonly Bar[]>();
  const barsOf = (line: LineOf): readonly Bar[] => {
    const known = drawn.get(line);
    if (known !== undefined) return known;
    const parent = parentOf(byOwner, line);
    const bars = lineBars(context, line, planned.has(line.rootKey), parent === null ? [] : barsOf(parent));
    drawn.set(line, bars);
    return bars;
  };
  return inOrder(lines.flatMap((line) => (barsOf(line).length === 0 ? [] : [doughLine(line, barsOf(line))])));
}

/** The cuts and loads that a plan names and nobody has made yet, by what they are parts of. */
function partsStillToCome(ahead: LineContext['ahead']): LineContext['parts'] {
  const parts = new Map<string, StepPlace[]>();
  for (const { place } of ahead.values()) {
    if (place.cut === null && place.load === null) continue;
    const of = parts.get(place.ownerId);
    if (of === undefined) parts.set(place.ownerId, [place]);
    else of.push(place);
  }
  return parts;
}

function doughLine({ ownerId, cut, load, rootKey, tag, name, pieces, depth, productIds }: LineOf, bars: DoughLine['bars']): DoughLine {
  return { key: `${ownerId}|${cut ?? ''}|${load ?? ''}`, rootKey, tag, name, pieces, depth, productIds, bars };
}

/** The line that this one was divided off, or is to be. */
function parentOf(byOwner: ReadonlyMap<string, readonly LineOf[]>, { ownerId, cut, load, workpiece }: LineOf): LineOf | null {
  const isStillToCome = cut !== null || load !== null;
  const parentId = isStillToCome ? ownerId : (workpiece?.parentId ?? null);
  const above = parentId === null ? [] : (byOwner.get(parentId) ?? []);
  const ofCut = load === null || cut === null ? undefined : above.find((line) => line.cut === cut && line.load === null);
  return ofCut ?? above.find((line) => line.cut === null && line.load === null) ?? null;
}

/** The dough from which a workpiece came; a batch that is only proposed is its own. */
export function rootOf(state: FloorState, ownerId: string): string {
  const parentId = state.workpieces[ownerId]?.parentId ?? null;
  return parentId === null || state.workpieces[parentId] === undefined ? ownerId : rootOf(state, parentId);
}

function floorLines(state: FloorState, context: LineContext, serviceDate: string | null): readonly LineOf[] {
  const date = floorDateOf(state);
  return Object.values(state.workpieces).flatMap((workpiece) => {
    if (workpiece.ending === 'discarded') return [];
    if (workpiece.finishedMs !== null && serviceDate !== null && workpiece.serviceDate !== serviceDate) return [];
    const own: LineOf = {
      ownerId: workpiece.id,
      cut: null,
      load: null,
      rootKey: rootOf(state, workpiece.id),
      tag: dayTag(workpiece.tag, workpiece.serviceDate, date),
      name: nameOf(state, workpiece),
      pieces: workpiece.pieces,
      depth: workpiece.kind === 'cut' ? 1 : workpiece.kind === 'load' ? 2 : 0,
      productIds: workpiece.productId === null ? workpiece.cuts.map((cut) => cut.productId) : [workpiece.productId],
      way: wayOf(state, workpiece),
      workpiece,
    };
    return [own, ...stillToCome(context, own, workpiece.cuts, (cut) => productIn(state, cut.productId, cut.productVersion))];
  });
}

function proposedLines(state: FloorState, proposal: SheetProposal, context: LineContext): readonly LineOf[] {
  const tags = new TagsToCome(state);
  return proposal.batches.flatMap((batch) => {
    const formula = state.formulas[versionKey(batch.formulaId, state.formulaVersions[batch.formulaId] ?? 0)];
    if (formula === undefined) return [];
    const products = batch.cuts.flatMap((cut) => newestProduct(state, cut.productId) ?? []);
    const [only] = products;
    const own: LineOf = {
      ownerId: batch.batchKey,
      cut: null,
      load: null,
      rootKey: batch.batchKey,
      tag: tags.next(formula.letters),
      name: products.length === 1 && only !== undefined ? only.name : formula.name,
      pieces: batch.cuts.length === 1 ? (batch.cuts[0]?.pieces ?? null) : null,
      depth: 0,
      productIds: batch.cuts.map((cut) => cut.productId),
      way: products.length === 1 && only !== undefined ? [...formula.method, ...only.way] : formula.method,
      workpiece: null,
    };
    return [own, ...stillToCome(context, own, batch.cuts, (cut) => newestProduct(state, cut.productId))];
  });
}

/** Cuts and loads that a plan names and that nobody has made yet; without a plan, the cuts. */
function stillToCome<Cut extends { readonly pieces: number }>(
  context: LineContext,
  own: LineOf,
  cuts: readonly Cut[],
  productFor: (cut: Cut) => Product | null,
): readonly LineOf[] {
  const named = new Map<string, { readonly cut: number | null; readonly load: number | null }>();
  for (const { place } of context.ahead.values()) {
    if (place.ownerId === own.ownerId && (place.cut !== null || place.load !== null))
      named.set(`${place.cut ?? ''}|${place.load ?? ''}`, place);
  }
  const { workpiece } = own;
  const isOpen = workpiece !== null && workpiece.finishedMs === null && workpiece.productId === null;
  const goesOnByTargets = isOpen && named.size === 0 && context.ahead.size === 0;
  if (goesOnByTargets) cuts.forEach((_, cut) => named.set(`${cut}|`, { cut, load: null }));
  // The cut of a load has a line of its own, to be its heading, only where the plan has steps for it.
  return [...named.values()].flatMap(({ cut, load }) => {
    const of = cut === null ? undefined : cuts[cut];
    const product = of === undefined ? ownProduct(context.state, own) : productFor(of);
    if (product === null) return [];
    const pieces = of?.pieces ?? own.pieces;
    const cutOrOwn = cut === null ? own.tag : cutTag(own.tag, cut);
    return [
      {
        ...own,
        cut,
        load,
        tag: load === null ? cutOrOwn : `${cutOrOwn}·${load + 1}`,
        name: product.name,
        pieces: load === null ? pieces : loadPieces(product, pieces, load),
        depth: load === null ? 1 : 2,
        productIds: [product.id],
        way: product.way,
        workpiece: null,
      },
    ];
  });
}

/** Full loads first, what is left in the last one. */
function loadPieces(product: Product, pieces: number | null, load: number): number | null {
  const most = product.loads?.pieces;
  return most === undefined || pieces === null ? pieces : Math.max(0, Math.min(most, pieces - load * most));
}

function ownProduct(state: FloorState, { workpiece, productIds }: LineOf): Product | null {
  if (workpiece !== null) return productOf(state, workpiece);
  return productIds[0] === undefined ? null : newestProduct(state, productIds[0]);
}

function productIn(state: FloorState, id: string, version: number): Product | null {
  return state.products[versionKey(id, version)] ?? null;
}

function newestProduct(state: FloorState, id: string): Product | null {
  return productIn(state, id, state.productVersions[id] ?? 0);
}

/** Families by when their first step begins, the dough before its cuts, each with its loads below it: C1, C1a, C1a·1, C1b. */
function inOrder(lines: readonly DoughLine[]): readonly DoughLine[] {
  const families = new Map<string, DoughLine[]>();
  for (const line of lines) families.set(line.rootKey, [...(families.get(line.rootKey) ?? []), line]);
  const firstMs = (family: readonly DoughLine[]): number => Math.min(...family.flatMap((line) => line.bars[0]?.fromMs ?? []));
  return [...families.values()]
    .map((family) => family.toSorted((a, b) => Math.sign(a.depth) - Math.sign(b.depth) || byTag(a, b)))
    .sort((a, b) => firstMs(a) - firstMs(b) || byTag(a[0], b[0]))
    .flat();
}

function byTag(a: DoughLine | undefined, b: DoughLine | undefined): number {
  return (a?.tag ?? '').localeCompare(b?.tag ?? '', 'en', { numeric: true });
}

/** The tags that proposed batches will most likely get: the next numbers of their letters that no dough bears. */
class TagsToCome {
  private readonly counts = new Map<string, number>();
  private readonly borne: ReadonlySet<string>;

  constructor(state: FloorState) {
    this.borne = new Set(Object.values(state.workpieces).flatMap((workpiece) => (workpiece.finishedMs === null ? [workpiece.tag] : [])));
  }

  next(letters: string): string {
    let number = (this.counts.get(letters) ?? 0) + 1;
    while (this.borne.has(`${letters}${number}`)) number += 1;
    this.counts.set(letters, number);
    return `${letters}${number}`;
  }
}
