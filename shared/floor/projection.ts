import { targetMin, type Step, type Verb } from '../documents/method.ts';
import { dueOf } from './due.ts';
import type { PlannedStep } from './events.ts';
import { plannedStepBelow, plannedStepOf } from './planned-step.ts';
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
  readonly stepId: string;
  readonly tag: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly isUnderWay: boolean;
  readonly slotsNeeded: number;
  /** What its programme begins at, in °C; null where it says nothing. */
  readonly bakeC: number | null;
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
  const plannedOf = (stepId: string): PlannedStep | null => plannedStepOf(state, workpiece, stepId);
  atMs = append(stretches, way.slice(from), atMs, workpiece.pieces, plannedOf);
  const stays = inLoads(state, workpiece, ovenStays(state, workpiece, way, stretches, plannedOf));
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
      const plannedOf = (stepId: string): PlannedStep | null => firstPlanned(state, workpiece, cutIndex, stepId);
      const ahead: Stretch[] = [];
      readyMs = Math.max(readyMs, append(ahead, product.way, atMs, cut.pieces, plannedOf));
      stays.push(...inLoads(state, cutWorkpiece, ovenStays(state, cutWorkpiece, product.way, ahead, plannedOf), cutIndex));
    });
  }
  return { stretches, stays, readyMs };
}

/** A cut that will go on in loads has a stay for each of them; which of them shares an oven with which is seen when they are there. */
function inLoads(state: FloorState, workpiece: Workpiece, stays: readonly OvenStay[], cut?: number): OvenStay[] {
  const loads = productOf(state, workpiece)?.loads;
  if (loads === undefined || workpiece.kind === 'load' || workpiece.pieces === null || loads.after in workpiece.steps) return [...stays];
  const count = Math.ceil(workpiece.pieces / loads.pieces);
  return stays.flatMap((stay) =>
    Array.from({ length: count }, (_, load): OvenStay => {
      const at = cut === undefined ? { load } : { cut, load };
      const planned = plannedStepBelow(state, workpiece, at, stay.stepId);
      return {
        ...stay,
        ...(planned === null ? {} : plannedStay(planned, stay)),
        tag: `${stay.tag}·${load + 1}`,
        slotsNeeded: Math.ceil(stay.slotsNeeded / count),
      };
    }),
  );
}

/** The tag of the n-th cut of a batch: C1a, C1b … */
export function cutTag(tag: string, index: number): string {
  return `${tag}${String.fromCharCode('a'.charCodeAt(0) + index)}`;
}

/** Each step after the one before it: by its target, or when the plan has it, where that is still ahead. */
function append(
  stretches: Stretch[],
  steps: readonly Step[],
  startMs: number,
  pieces: number | null,
  plannedOf: (stepId: string) => PlannedStep | null,
): number {
  let atMs = startMs;
  for (const step of steps) {
    const planned = plannedOf(step.id);
    const fromMs = Math.max(atMs, planned?.plannedStartMs ?? atMs);
    const plannedMs = (planned?.plannedEndMs ?? 0) - (planned?.plannedStartMs ?? 0);
    const endMs = fromMs + (plannedMs > 0 ? plannedMs : targetMin(step, pieces) * MINUTE_MS);
    // A rest before a step that waits for its time in the plan is that much longer.
    const before = stretches.at(-1);
    if (before !== undefined && before.kind === 'timed' && before.toMs < fromMs)
      stretches[stretches.length - 1] = { ...before, toMs: fromMs };
    stretches.push(stretch(step, fromMs, endMs, false));
    atMs = endMs;
  }
  return atMs;
}

/** What the plan says of a cut that goes in loads is said of its loads: the first of them leads. */
function firstPlanned(state: FloorState, workpiece: Workpiece, cut: number, stepId: string): PlannedStep | null {
  return plannedStepBelow(state, workpiece, { cut }, stepId) ?? plannedStepBelow(state, workpiece, { cut, load: 0 }, stepId);
}

function plannedStay(planned: PlannedStep, stay: OvenStay): Pick<OvenStay, 'fromMs' | 'toMs' | 'deckIds'> {
  const lastsMs = planned.plannedEndMs === undefined ? stay.toMs - stay.fromMs : planned.plannedEndMs - planned.plannedStartMs;
  return {
    fromMs: planned.plannedStartMs,
    toMs: planned.plannedStartMs + lastsMs,
    deckIds: plannedDecksFirst(stay.deckIds, planned),
  };
}

function stretch(step: Step, fromMs: number, toMs: number, isUnderWay: boolean): Stretch {
  return { stepId: step.id, verb: step.verb, kind: step.kind, fromMs, toMs, isUnderWay };
}

function ovenStays(
  state: FloorState,
  workpiece: Workpiece,
  way: readonly Step[],
  stretches: readonly Stretch[],
  plannedOf: (stepId: string) => PlannedStep | null,
): OvenStay[] {
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
      stepId: bake.stepId,
      tag: workpiece.tag,
      fromMs: bake.fromMs,
      toMs: bake.toMs,
      isUnderWay: bake.isUnderWay,
      slotsNeeded: load === undefined ? 1 : slotsNeeded(state, workpiece, load),
      bakeC: way[index]?.bake?.[0]?.temperatureC ?? null,
      deckIds: plannedDecksFirst(
        load === undefined ? [] : decksFor(kitchen, load).map((deck) => deck.id),
        load === undefined ? null : (plannedOf(bake.stepId) ?? plannedOf(load.id)),
      ),
    });
  });
  return stays;
}

/** The deck that the plan has it on comes before those that would do. */
function plannedDecksFirst(deckIds: readonly string[], planned: PlannedStep | null): readonly string[] {
  const decks = (planned?.resources ?? []).filter(({ kind, id }) => kind === 'deck' && deckIds.includes(id)).map(({ id }) => id);
  return [...decks, ...deckIds.filter((id) => !decks.includes(id))];
}
