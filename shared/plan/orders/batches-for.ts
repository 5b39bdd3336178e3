import type { Order } from '../../documents/order.ts';
import type { FloorState } from '../../floor/state.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { SizedPieces } from '../../trade/batch-size.ts';
import { BuildContext } from '../build/context.ts';
import type { DayInput, ProposedBatch } from '../build/day-input.ts';
import { drawsOf } from '../build/draws.ts';
import { allLeaves, Estimates } from '../build/estimates.ts';
import { Families, floorThreads } from '../build/floor-threads.ts';
import { dueMsOf, supplyOf } from '../build/goals.ts';
import { PlanBefore } from '../build/plan-before.ts';
import { proposedThreads } from '../build/proposed-threads.ts';
import { familyOf, threadKey } from '../build/thread.ts';
import { allocationOf, SLACK_MS } from './allocation.ts';
import { demandGroups, type Demand, type DemandGroup } from './demand-groups.ts';
import { doughBatches } from './dough-batches.ts';
import { feedsFor } from './feeds-for.ts';
import type { OrderFault } from './order-fault.ts';
import { cutsFor, haveVessels, ovenRoom, vesselRoom, type VesselCut } from './oven-cuts.ts';

/** Ferments that take of ferments: deeper than this books are wrong. */
const MOST_DEPTH = 8;
/** Batches of one proposal. */
export const MOST_PROPOSED = 500;

/**
 * The batches that orders need beyond what is on the floor: the same dough merged, early where it keeps, split evenly by
 * what mixers and ovens take, and the feeds of ferments that they draw on. `orders` are all that are wanted on their days.
 * The preps of doughs are planned with them by the floor and are not among these. Refused by name is what this kitchen
 * cannot make at all.
 */
export function batchesFor(
  state: FloorState,
  orders: readonly Order[],
  nowMs: number,
): Result<readonly ProposedBatch[], readonly OrderFault[]> {
  const context = contextOf(state, nowMs);
  const faults: OrderFault[] = [];
  const doughs = demandGroups(demandsOf(context, orders, faults)).flatMap((group) => batchesOf(context, group, faults));
  if (faults.length > 0) return refused(faults);
  const keys = new Map<string, number>();
  const named = doughs.map((batch): ProposedBatch => ({ ...batch, batchKey: nextKey(keys, batch.formulaId) }));
  return accepted(withFeeds(context, named, orders, keys));
}

function contextOf(state: FloorState, nowMs: number): BuildContext {
  const input: DayInput = { state, nowMs, calendars: { stations: {}, cleanings: [] }, proposed: [], calendarsEndMs: nowMs };
  return new BuildContext(input, nowMs);
}

/** What orders lack, once everything on the floor that is in time has gone to those that are wanted first. */
function demandsOf(context: BuildContext, orders: readonly Order[], faults: OrderFault[]): readonly Demand[] {
  const { state } = context;
  const dates = new Set(orders.map((order) => order.serviceDate));
  const others = Object.values(state.orders).filter((order) => !dates.has(order.serviceDate));
  const estimates = new Estimates(context, new PlanBefore(state, []));
  const supplies = allLeaves(floorThreads(context, new Families())).flatMap((leaf) => supplyOf(leaf, estimates));
  const readyMs = new Map(supplies.map((supply) => [supply.key, supply.readyMs]));
  const { shares } = allocationOf(state, [...others, ...orders], supplies, { moreCanBeMade: true });
  const covered = new Map<string, number>();
  const byId = new Map(orders.map((order) => [order.id, order]));
  for (const { orderId, key, pieces } of shares) {
    const latestMs = (byId.get(orderId)?.readyMs ?? 0) + SLACK_MS;
    if ((readyMs.get(key) ?? 0) <= latestMs) covered.set(orderId, (covered.get(orderId) ?? 0) + pieces);
  }
  return orders.flatMap((order): Demand[] => {
    const pieces = order.pieces - (covered.get(order.id) ?? 0);
    return pieces > 0 ? demandOf(context, order, pieces, faults) : [];
  });
}

function demandOf(context: BuildContext, order: Order, pieces: number, faults: OrderFault[]): Demand[] {
  const { productId } = order;
  const product = context.newestProduct(productId);
  if (product === null) {
    faults.push({ code: 'productUnknown', orderIds: [order.id], productId });
    return [];
  }
  const formula = context.state.archivedFormulas.includes(product.formula) ? null : context.find(product.formula);
  if (formula === null) {
    faults.push({ code: 'formulaUnknown', orderIds: [order.id], productId, formulaId: product.formula });
    return [];
  }
  return [{ order, product, formula, pieces }];
}

function batchesOf(context: BuildContext, group: DemandGroup, faults: OrderFault[]): readonly Omit<ProposedBatch, 'batchKey'>[] {
  const { formula, demands } = group;
  const { kitchen, find, ingredients } = context;
  const orderIds = demands.map(({ order }) => order.id);
  const productId = demands[0]?.product.id ?? '';
  const batches = doughBatches(piecesOf(demands), formula, { formulaOf: find, ingredients, kitchen }, leastBatches(context, group));
  if (!batches.ok) {
    const mixerIds = kitchen.mixers.map(({ id }) => id);
    const pieceG = Math.max(...demands.map(({ product }) => product.pieceG));
    if (batches.fault === 'noMixer') faults.push({ code: 'noMixer', orderIds, productId, formulaId: formula.id, mixerIds, pieceG });
    else faults.push({ code: 'tooMany', orderIds, productId, formulaId: formula.id, batches: MOST_PROPOSED });
    return [];
  }
  const serviceDate = demands[0]?.order.serviceDate;
  return batches.value.map(({ grams, pieces }) => ({
    formulaId: formula.id,
    grams,
    cuts: pieces.flatMap((own) => cutsOf(context, group, own, faults)),
    ...(serviceDate === undefined ? {} : { serviceDate }),
  }));
}

/** As many batches as it takes that there are tins, boards, bannetons for each of them, of all products that are cut from it. */
function leastBatches({ kitchen }: BuildContext, { formula, demands }: DemandGroup): number {
  const products = new Map(demands.map(({ product }) => [product.id, product]));
  const pieces = piecesOf(demands);
  const counts = pieces.map((own) => {
    const product = products.get(own.productId);
    return product === undefined ? 1 : Math.ceil(own.pieces / vesselRoom(product, formula, kitchen, own.pieces));
  });
  const least = Math.max(1, ...counts);
  const cuts = (batches: number): readonly VesselCut[] =>
    pieces.flatMap((own) => {
      const product = products.get(own.productId);
      return product === undefined ? [] : [{ product, pieces: Math.ceil(own.pieces / batches) }];
    });
  for (let batches = least; batches <= most(pieces); batches += 1) if (haveVessels(cuts(batches), formula, kitchen)) return batches;
  return least;
}

/** No cut has less than one piece. */
function most(pieces: readonly SizedPieces[]): number {
  return Math.max(0, ...pieces.map((own) => own.pieces));
}

/** The pieces of each product, in the order in which they are wanted. */
function piecesOf(demands: readonly Demand[]): readonly SizedPieces[] {
  const byProduct = new Map<string, SizedPieces>();
  for (const { product, pieces } of demands) {
    const before = byProduct.get(product.id)?.pieces ?? 0;
    byProduct.set(product.id, { productId: product.id, pieces: before + pieces, pieceG: product.pieceG });
  }
  return [...byProduct.values()];
}

function cutsOf(
  context: BuildContext,
  { formula, demands }: DemandGroup,
  { productId, pieces, pieceG }: SizedPieces,
  faults: OrderFault[],
): ProposedBatch['cuts'] {
  const own = demands.filter(({ product }) => product.id === productId);
  const product = own[0]?.product;
  if (product === undefined) return [];
  const room = ovenRoom(product, context.kitchen);
  const cuts = cutsFor(pieces, product, formula, room);
  if (cuts !== null) return cuts.map((count) => ({ productId, pieces: count, grams: upToCut(count, pieceG) }));
  const fault: OrderFault = {
    code: 'noDeck',
    orderIds: own.map(({ order }) => order.id),
    productId,
    formulaId: formula.id,
    deckIds: room.deckIds,
    pieces,
    mostPieces: room.pieces,
  };
  if (!faults.some((other) => other.code === 'noDeck' && other.productId === productId)) faults.push(fault);
  return [];
}

function upToCut(pieces: number, pieceG: number): number {
  return Math.round(pieces * pieceG * 10) / 10;
}

function nextKey(keys: Map<string, number>, formulaId: string): string {
  const number = (keys.get(formulaId) ?? 0) + 1;
  keys.set(formulaId, number);
  return `${formulaId}#${number}`;
}

/** Adds what has to be made for those who would have nothing to draw on, and for what that takes in its turn. */
function withFeeds(
  context: BuildContext,
  doughs: readonly ProposedBatch[],
  orders: readonly Order[],
  keys: Map<string, number>,
): readonly ProposedBatch[] {
  let proposed = doughs;
  const byId = new Map(orders.map((order) => [order.id, order]));
  for (let depth = 0; depth < MOST_DEPTH; depth += 1) {
    const families = new Families();
    const threads = [...floorThreads(context, families), ...proposedThreads(context, proposed, families)];
    const estimates = new Estimates(context, new PlanBefore(context.state, []));
    const leaves = allLeaves(threads);
    const byKey = new Map(leaves.map((leaf) => [threadKey(leaf.place), leaf]));
    for (const { orderId, key } of allocationOf(
      context.state,
      orders,
      leaves.flatMap((leaf) => supplyOf(leaf, estimates)),
    ).shares) {
      const order = byId.get(orderId);
      const leaf = byKey.get(key);
      if (order !== undefined && leaf !== undefined) estimates.wanted(leaf, dueMsOf(order));
    }
    const { short } = drawsOf(context, threads.flatMap(familyOf), estimates);
    // What doughs on the floor lack was somebody's decision: feeds are made for what is proposed.
    const feeds = feedsFor(
      context,
      short.filter(({ by }) => by.thread.place.workpieceId === null),
    );
    if (feeds.length === 0) return proposed;
    const serviceDate = orders[0]?.serviceDate;
    const added = feeds.map(({ formula, grams }) => ({
      batchKey: nextKey(keys, formula.id),
      formulaId: formula.id,
      grams,
      cuts: [],
      ...(serviceDate === undefined ? {} : { serviceDate }),
    }));
    proposed = [...proposed, ...added];
  }
  return proposed;
}
