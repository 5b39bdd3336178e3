import { targetMin, type Step, type Verb } from '../documents/method.ts';
import { dueOf } from './due.ts';
import { decksFor, slotsNeeded } from './slots.ts';
import { versionKey, type FloorState, type Workpiece } from './state.ts';
import { positionOf, productOf, wayOf } from './way.ts';

const MINUTE_MS = 60_000;

/** A stretch of a dough's way ahead, as it will be if every step takes its target. */
export interface Stretch {
  readonly stepId: string;
  readonly verb: Verb;
  readonly kind: Step['kind'];
  readonly fromMs: number;
  readonly toMs: number;
  readonly isUnderWay: boolean;
}

/** A stay in an oven, on now or expected. */
export interface OvenStay {
  readonly workpieceId: string;
  readonly tag: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly isUnderWay: boolean;
  readonly slotsNeeded: number;
  /** Decks that will do, best first. */
  readonly deckIds: readonly string[];
}

/** A workpiece's way from an instant on, and what becomes of its cuts in the ovens. What is overdue is taken to happen now. */
export interface Projection {
  readonly stretches: readonly Stretch[];
  readonly stays: readonly OvenStay[];
  readonly readyMs: number;
}

/** Projects an open workpiece from `nowMs` on by its target times; null once it is finished. */
export function projectionOf(state: FloorState, workpiece: Workpiece, nowMs: number): Projection | null {
  const due = dueOf(state, workpiece);
  if (due === null) return null;
  const way = wayOf(state, workpiece);
  const index = positionOf(way, workpiece);
  const stretches: Stretch[] = [];
  const current = way[index];
  let atMs = Math.max(due.dueMs, nowMs);
  let from = index;
  if (current !== undefined && due.startedMs !== null) {
    stretches.push(stretch(current, Math.min(due.startedMs, nowMs), atMs, true));
    from = index + 1;
  }
  atMs = append(stretches, way.slice(from), atMs, workpiece.pieces);
  const stays = inLoads(state, workpiece, ovenStays(state, workpiece, way, stretches));
  let readyMs = atMs;
  if (workpiece.productId === null) {
    workpiece.cuts.forEach((cut, cutIndex) => {
      const product = state.products[versionKey(cut.productId, cut.productVersion)];
      if (product === undefined) return;
      const cutWorkpiece: Workpiece = {
        ...workpiece,
        kind: 'cut',
        tag: cutTag(workpiece.tag, cutIndex),
        productId: cut.productId,
        productVersion: cut.productVersion,
        pieces: cut.pieces,
        slotIds: [],
      };
      const ahead: Stretch[] = [];
      readyMs = Math.max(readyMs, append(ahead, product.way, atMs, cut.pieces));
      stays.push(...inLoads(state, cutWorkpiece, ovenStays(state, cutWorkpiece, product.way, ahead)));
    });
  }
  return { stretches, stays, readyMs };
}

/** A cut that will go on in loads has a stay for each of them; which of them shares an oven with which is seen when they are there. */
function inLoads(state: FloorState, workpiece: Workpiece, stays: readonly OvenStay[]): OvenStay[] {
  const loads = productOf(state, workpiece)?.loads;
  if (loads === undefined || workpiece.kind === 'load' || workpiece.pieces === null || loads.after in workpiece.steps) return [...stays];
  const count = Math.ceil(workpiece.pieces / loads.pieces);
  return stays.flatMap((stay) =>
    Array.from({ length: count }, (_, index) => ({
      ...stay,
      tag: `${stay.tag}·${index + 1}`,
      slotsNeeded: Math.ceil(stay.slotsNeeded / count),
    })),
  );
}

/** The tag of the n-th cut of a batch: C1a, C1b … */
export function cutTag(tag: string, index: number): string {
  return `${tag}${String.fromCharCode('a'.charCodeAt(0) + index)}`;
}

function append(stretches: Stretch[], steps: readonly Step[], startMs: number, pieces: number | null): number {
  let atMs = startMs;
  for (const step of steps) {
    const endMs = atMs + targetMin(step, pieces) * MINUTE_MS;
    stretches.push(stretch(step, atMs, endMs, false));
    atMs = endMs;
  }
  return atMs;
}

function stretch(step: Step, fromMs: number, toMs: number, isUnderWay: boolean): Stretch {
  return { stepId: step.id, verb: step.verb, kind: step.kind, fromMs, toMs, isUnderWay };
}

function ovenStays(state: FloorState, workpiece: Workpiece, way: readonly Step[], stretches: readonly Stretch[]): OvenStay[] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return [];
  const stays: OvenStay[] = [];
  stretches.forEach((bake) => {
    if (bake.kind !== 'bake') return;
    const index = way.findIndex((step) => step.id === bake.stepId);
    const load = way
      .slice(0, index)
      .reverse()
      .find((step) => step.verb === 'load');
    stays.push({
      workpieceId: workpiece.id,
      tag: workpiece.tag,
      fromMs: bake.fromMs,
      toMs: bake.toMs,
      isUnderWay: bake.isUnderWay,
      slotsNeeded: load === undefined ? 1 : slotsNeeded(state, workpiece, load),
      deckIds: load === undefined ? [] : decksFor(kitchen, load).map((deck) => deck.id),
    });
  });
  return stays;
}
