import { targetMin, type Step } from '../../../shared/documents/method.ts';
import type { BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { Order } from '../../../shared/documents/order.ts';
import type { FloorEvent, MovedStep, PlannedStep, PlanWarning } from '../../../shared/floor/events.ts';
import { decksFor } from '../../../shared/floor/slots.ts';
import { versionKey, type FloorState, type Workpiece } from '../../../shared/floor/state.ts';
import { wayOf } from '../../../shared/floor/way.ts';
import type { PlannedCleaning } from '../../../shared/plan/planned-cleaning.ts';
import { assert } from '../../../shared/result.ts';
import type { SheetProposal } from '../../../display/day/sheet-places.ts';
import { Floor } from '../../domain/support/floor.ts';
import { demoFile, OPENING_MS, bringInCommand, SERVICE_DATE } from '../../domain/support/harbour.ts';
import { idOf, SERVER_DEVICE } from '../../domain/support/ids.ts';
import { dayOf, workedFloor } from '../harness/staged-wall.ts';

const MINUTE_MS = 60_000;

/** What a day sheet is shown with. */
export interface SheetScene {
  readonly state: FloorState;
  readonly proposal: SheetProposal | null;
  readonly cleanings: readonly PlannedCleaning[];
  readonly nowMs: number;
}

/**
 * A plan as nobody would make it: every dough goes on by its target times whatever the others do, on the first machine
 * that will do. What does not go together in it is what a sheet has to show.
 */
export function naivePlan(state: FloorState): PlannedStep[] {
  return Object.values(state.workpieces).flatMap((workpiece) => planOf(state, workpiece));
}

function planOf(state: FloorState, workpiece: Workpiece): PlannedStep[] {
  if (workpiece.finishedMs !== null) return [];
  const steps: PlannedStep[] = [];
  const way = wayOf(state, workpiece);
  const atMs = append(steps, state, workpiece, way, {}, workpiece.plannedStartMs, workpiece.pieces);
  if (workpiece.productId !== null) return steps;
  workpiece.cuts.forEach((cut, index) => {
    const product = state.products[versionKey(cut.productId, cut.productVersion)];
    assert(product !== undefined, `${cut.productId} is not in the book`);
    append(steps, state, workpiece, product.way, { cut: index }, atMs, cut.pieces);
  });
  return steps;
}

function append(
  steps: PlannedStep[],
  state: FloorState,
  workpiece: Workpiece,
  way: readonly Step[],
  part: { readonly cut?: number },
  startMs: number,
  pieces: number | null,
): number {
  let atMs = startMs;
  let deck: string | undefined;
  for (const step of way) {
    const endMs = atMs + Math.round(targetMin(step, pieces) * MINUTE_MS);
    if (step.verb === 'load' && state.kitchen !== null) deck = decksFor(state.kitchen.document, step)[0]?.id;
    const resources: PlannedStep['resources'] = [];
    if (step.station !== undefined) resources.push({ kind: 'station', id: step.station });
    const mixer = step.claims.find((claim) => claim.kind === 'mixer');
    if (mixer !== undefined) resources.push({ kind: 'mixer', id: mixer.ids[0] ?? 'spiral' });
    if (step.kind === 'timed' && step.place !== undefined) resources.push({ kind: 'restPlace', id: step.place });
    if (deck !== undefined && (step.verb === 'load' || step.kind === 'bake' || step.verb === 'takeOut'))
      resources.push({ kind: 'deck', id: deck });
    if (step.verb === 'takeOut') deck = undefined;
    steps.push({ workpieceId: workpiece.id, ...part, stepId: step.id, plannedStartMs: atMs, plannedEndMs: endMs, resources });
    atMs = endMs;
  }
  return atMs;
}

/** Orders of the demo Saturday. */
export function demoOrders(): readonly Order[] {
  const order = (n: number, productId: string, pieces: number, readyMin: number, label: string): Order => ({
    id: idOf(700 + n),
    serviceDate: SERVICE_DATE,
    productId,
    pieces,
    readyMs: OPENING_MS + readyMin * MINUTE_MS,
    form: 'cooled',
    weight: 1,
    label,
  });
  return [
    order(1, 'olive-flat', 6, 300, 'shop'),
    order(2, 'cheese-boat', 16, 270, 'market stall'),
    order(3, 'milk-bun', 30, 270, 'shop'),
    order(4, 'custard-bun', 30, 330, 'shop'),
    order(5, 'country-loaf', 10, 600, 'van'),
    order(6, 'rye-tin', 16, 720, 'van'),
  ];
}

/** Orders, pins and a plan on a floor, as the events say them. */
export function withPlan(
  floor: Floor,
  more: { readonly moved?: readonly MovedStep[]; readonly warnings?: readonly PlanWarning[]; readonly orders?: readonly Order[] } = {},
): Floor {
  const say = (event: FloorEvent): void => floor.record(event);
  for (const order of more.orders ?? []) say({ type: 'orderPlaced', order, atMs: floor.nowMs });
  say({
    type: 'planAdopted',
    planId: idOf(800),
    isWhole: true,
    starts: naivePlan(floor.state),
    moved: [...(more.moved ?? [])],
    warnings: [...(more.warnings ?? [])],
    atMs: floor.nowMs,
  });
  return floor;
}

/** The demo house and its doughs; the orders are those of this stage. */
function demoDoughs(): BakehouseFile {
  const { day, standing: _standing, ...file } = demoFile();
  const { orders: _orders, ...doughs } = day;
  return { ...file, day: doughs };
}

/** The demo Saturday in the middle of its work, planned, with a moved step, a fixed one, a late order. */
export function busyDay(): SheetScene {
  const floor = new Floor();
  floor.ok(bringInCommand(demoDoughs(), OPENING_MS), { deviceId: SERVER_DEVICE });
  const buns = Object.values(floor.state.workpieces).find(({ formulaId }) => formulaId === 'milk-buns');
  assert(buns !== undefined, 'there are no buns');
  withPlan(floor);
  for (const order of demoOrders()) floor.record({ type: 'orderPlaced', order, atMs: floor.nowMs });
  const bulk = floor.state.plan?.steps[buns.id]?.find(({ stepId, cut }) => stepId === 'divide' && cut === undefined);
  assert(bulk !== undefined, 'the buns are not divided');
  const pinned = {
    id: idOf(810),
    kind: 'startsAt',
    workpieceId: buns.id,
    stepId: 'divide',
    startMs: bulk.plannedStartMs + 20 * MINUTE_MS,
  } as const;
  floor.record({ type: 'pinSet', pin: pinned, atMs: floor.nowMs });
  floor.record({ type: 'pinSet', pin: { id: idOf(811), kind: 'first', orderId: idOf(702) }, atMs: floor.nowMs });
  const rye = Object.values(floor.state.workpieces).find(({ formulaId }) => formulaId === 'rye');
  assert(rye !== undefined, 'there is no rye');
  const weigh = floor.state.plan?.steps[rye.id]?.find(({ stepId }) => stepId === 'weigh');
  assert(weigh !== undefined, 'the rye is not weighed');
  withPlan(floor, {
    moved: [
      {
        workpieceId: rye.id,
        stepId: 'weigh',
        fromMs: weigh.plannedStartMs - 25 * MINUTE_MS,
        toMs: weigh.plannedStartMs,
        because: { what: 'resource', resource: { kind: 'mixer', id: 'spiral' } },
      },
    ],
    warnings: [{ kind: 'late', orderId: idOf(703), atMs: OPENING_MS + 290 * MINUTE_MS, byMin: 20 }],
  });
  const worked = work(floor, 75);
  return { state: worked.state, proposal: null, cleanings: [cleaning(worked.nowMs)], nowMs: worked.nowMs };
}

/** The one that the demo kitchen has, an hour from now. */
function cleaning(nowMs: number): PlannedCleaning {
  return {
    cleaningId: 'spiral-bowl',
    plannedStartMs: nowMs + 60 * MINUTE_MS,
    plannedEndMs: nowMs + 75 * MINUTE_MS,
    resources: [
      { kind: 'mixer', id: 'spiral' },
      { kind: 'station', id: 'mixer' },
    ],
  };
}

/** Hands do what is due, minute by minute. */
function work(floor: Floor, untilMin: number): Floor {
  for (let minute = 0; minute < untilMin; minute += 1) {
    floor.until(OPENING_MS + minute * MINUTE_MS);
    for (const workpiece of Object.values(floor.state.workpieces)) {
      if (workpiece.finishedMs !== null) continue;
      const due = floor.due(workpiece.tag);
      if (due.dueMs > floor.nowMs) continue;
      const isBegun = due.startedMs !== null && due.phase !== 'resting';
      const wantsStart = !isBegun && due.action.minutes.target >= 3 && due.action.verb !== 'load';
      const onStep = { workpieceId: workpiece.id, stepId: due.action.id };
      floor.give(wantsStart ? { type: 'startStep', ...onStep } : { type: 'finishStep', ...onStep }, {
        stationId: due.action.station ?? null,
      });
    }
  }
  return floor.until(OPENING_MS + untilMin * MINUTE_MS);
}

/** Doughs without a plan. */
export function unplannedDay(): SheetScene {
  const floor = workedFloor(dayOf(5, 20), { untilMin: 100 });
  return { state: floor.state, proposal: null, cleanings: [], nowMs: floor.nowMs };
}

/** Two batches more, tried on top of the busy day. */
export function triedDay(): SheetScene {
  const { state, cleanings, nowMs } = busyDay();
  const batches = ['country#1', 'milk-buns#1'].map((batchKey, index) => ({
    batchKey,
    formulaId: batchKey.split('#')[0] ?? '',
    grams: 5_000,
    cuts:
      index === 0
        ? [{ productId: 'country-loaf', pieces: 10, grams: 5_000 }]
        : [
            { productId: 'milk-bun', pieces: 30, grams: 2_500 },
            { productId: 'custard-bun', pieces: 30, grams: 2_500 },
          ],
    plannedStartMs: nowMs + (60 + 90 * index) * MINUTE_MS,
  }));
  const kept = Object.entries(state.plan?.steps ?? {}).flatMap(([batchKey, steps]) => steps.map((step) => proposedStep(step, batchKey)));
  const steps = batches.flatMap((batch) => triedSteps(state, batch));
  const ask = { serviceDate: SERVICE_DATE, pins: [], firstOrderIds: [idOf(705)], changes: [], seed: 1 };
  return { state, cleanings, nowMs, proposal: { batches, steps: [...kept, ...steps], warnings: [], ask } };
}

function triedSteps(state: FloorState, batch: SheetProposal['batches'][number]): SheetProposal['steps'] {
  const formula = state.formulas[versionKey(batch.formulaId, state.formulaVersions[batch.formulaId] ?? 0)];
  const model = Object.values(state.workpieces)[0];
  assert(formula !== undefined && model !== undefined, 'there is no such formula');
  const steps: PlannedStep[] = [];
  const atMs = append(steps, state, model, formula.method, {}, batch.plannedStartMs, null);
  batch.cuts.forEach((cut, index) => {
    const product = state.products[versionKey(cut.productId, state.productVersions[cut.productId] ?? 0)];
    if (product !== undefined) append(steps, state, model, product.way, batch.cuts.length === 1 ? {} : { cut: index }, atMs, cut.pieces);
  });
  return steps.map((step) => proposedStep(step, batch.batchKey));
}

function proposedStep(
  { cut, load, stepId, plannedStartMs, plannedEndMs, resources }: PlannedStep,
  batchKey: string,
): SheetProposal['steps'][number] {
  return { batchKey, cut, load, stepId, plannedStartMs, plannedEndMs: plannedEndMs ?? plannedStartMs, resources };
}

/** So many batches, planned. */
export function fullDay(batches: number, apartMin: number): SheetScene {
  const floor = workedFloor(dayOf(batches, apartMin), { untilMin: 60 });
  withPlan(floor, { orders: demoOrders() });
  return { state: floor.state, proposal: null, cleanings: [], nowMs: floor.nowMs };
}

/** The days that a sheet is shown with, by what is particular about them. */
export type SheetScenes = Readonly<Record<'busy' | 'tried' | 'unplanned' | 'empty', SheetScene>>;

/** Every scene that the tests and the page of elements show. */
export function sheetScenes(): SheetScenes {
  const busy = busyDay();
  return {
    busy,
    tried: triedDay(),
    unplanned: unplannedDay(),
    empty: { ...busy, state: { ...busy.state, workpieces: {}, orders: {}, plan: null } },
  };
}
