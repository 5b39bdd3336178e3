import { targetMin } from '../../shared/documents/method.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { ProposedStep } from '../../shared/plan/proposed.ts';
import { deckFaults } from './plan-day-ovens.ts';
import { handsFaults, mixerFaults, placeFaults, vesselFaults } from './plan-day-resources.ts';
import { drawFaults, sidePrepFaults } from './plan-day-preps.ts';
import { threadsOf, toldOf, type MadeBatch, type PlanThread } from './plan-day-threads.ts';

const MINUTE_MS = 60_000;
/** Planned times are whole seconds; lengths in the books need not be. */
const ROUND_MS = 1_000;

/** When somebody is there, by station; a station that is not named is always manned. */
export type Manned = Readonly<Record<string, readonly { readonly fromMs: number; readonly toMs: number }[]>>;

/**
 * What is wrong with the plan of a day of which nothing has begun, from the kitchen, the books and the plan alone, as
 * a baker would find it: no line is shared with what builds or solves the day. Each fault begins with its name and a colon:
 * missing, unknown, order, length, hands, mixer, deck, vessel, place, prep, short; and overstayed, where something waits longer than it
 * bears, which a day that cannot work may have to accept.
 */
export function dayFaultsOf(
  state: FloorState,
  steps: readonly (PlannedStep | ProposedStep)[],
  { proposed = [], manned = {} }: { readonly proposed?: readonly MadeBatch[]; readonly manned?: Manned } = {},
): string[] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return ['missing: the kitchen'];
  const threads = threadsOf(state, [...plannedOnFloor(state, steps), ...proposed, ...preparationsOf(proposed, steps)], steps);
  return [
    ...stepsFaults(threads, steps),
    ...threads.flatMap((thread) => [...orderFaults(thread), ...lengthFaults(thread), ...linkFaults(thread)]),
    ...handsFaults(kitchen, threads, manned),
    ...mixerFaults(state, kitchen, threads),
    ...deckFaults(kitchen, threads),
    ...vesselFaults(kitchen, threads),
    ...placeFaults(kitchen, threads),
    ...sidePrepFaults(state, threads),
    ...drawFaults(threads),
    ...orderedFaults(state, threads),
  ];
}

/** What stands on the floor and has not begun. */
function plannedOnFloor(state: FloorState, steps: readonly (PlannedStep | ProposedStep)[]): MadeBatch[] {
  const keys = new Set(steps.map((step) => toldOf(step).key));
  return Object.values(state.workpieces)
    .filter((one) => keys.has(one.id) && Object.keys(one.steps).length === 0 && one.kind !== 'cut' && one.kind !== 'load')
    .map((one) => ({ batchKey: one.id, formulaId: one.formulaId, grams: one.grams, cuts: one.cuts }));
}

/** Preps that are made for proposed batches: `custard>milk-buns#1` is custard for the first milk buns. */
function preparationsOf(proposed: readonly MadeBatch[], steps: readonly (PlannedStep | ProposedStep)[]): MadeBatch[] {
  const known = new Set(proposed.map((batch) => batch.batchKey));
  const keys = [...new Set(steps.map((step) => toldOf(step).key))].filter((key) => key.includes('>') && !known.has(key));
  return keys.map((batchKey) => ({ batchKey, formulaId: batchKey.slice(0, batchKey.indexOf('>')), grams: 0, cuts: [] }));
}

/** Every step of every thread is planned, once, and nothing is that is not there. */
function stepsFaults(threads: readonly PlanThread[], steps: readonly (PlannedStep | ProposedStep)[]): string[] {
  const placed = new Set(threads.flatMap((thread) => thread.steps.map(({ planned }) => planned)).filter((one) => one !== null));
  const ownKeys = new Set(threads.map((thread) => thread.batch.batchKey));
  const told = steps.map(toldOf).filter((one) => ownKeys.has(one.key));
  const names = told.map((one) => `${one.key} ${one.cut ?? ''} ${one.load ?? ''} ${one.stepId}`);
  return [
    ...threads.flatMap((thread) =>
      thread.steps.filter((one) => one.planned === null).map(({ step }) => `missing: ${step.id} of ${thread.name}`),
    ),
    ...(told.length === placed.size
      ? []
      : names.filter((name, at) => names.indexOf(name) !== at).map((name) => `unknown: ${name} is planned twice`)),
    ...(new Set(names).size === placed.size ? [] : [`unknown: ${new Set(names).size - placed.size} planned steps belong to nothing`]),
  ];
}

/** One step after another, a cut after its dough is divided, a load once it is shaped. */
function orderFaults({ name, steps, above }: PlanThread): string[] {
  const faults: string[] = [];
  let readyMs = above === null ? -Infinity : shapedMs(above.thread, above.share);
  for (const { step, planned } of steps) {
    if (planned === null) continue;
    if (planned.plannedStartMs < readyMs - ROUND_MS)
      faults.push(`order: ${step.id} of ${name} begins ${inMin(readyMs - planned.plannedStartMs)} too soon`);
    readyMs = planned.plannedEndMs;
  }
  return faults;
}

function shapedMs(thread: PlanThread, share: number): number {
  const last = thread.steps.at(-1)?.planned;
  if (last === undefined || last === null) return -Infinity;
  return last.plannedStartMs + share * (last.plannedEndMs - last.plannedStartMs);
}

/** Work takes what it takes for so many pieces; whatever waits does so from its earliest to its latest. */
function lengthFaults({ name, steps, pieces }: PlanThread): string[] {
  return steps.flatMap(({ step, planned }) => {
    if (planned === null) return [];
    const isMs = planned.plannedEndMs - planned.plannedStartMs;
    const wantedMs = targetMin(step, pieces) * MINUTE_MS;
    if (step.kind === 'hands' || step.kind === 'judged')
      return Math.abs(isMs - wantedMs) <= ROUND_MS
        ? []
        : [`length: ${step.id} of ${name} takes ${inMin(isMs)} and needs ${inMin(wantedMs)}`];
    const leastMs = Math.min(wantedMs, (step.minutes.earliest ?? step.minutes.target) * MINUTE_MS);
    if (isMs < leastMs - ROUND_MS) return [`length: ${step.id} of ${name} takes ${inMin(isMs)}, at least ${inMin(leastMs)}`];
    const mostMs = (step.minutes.latest ?? Infinity) * MINUTE_MS;
    return isMs <= mostMs + ROUND_MS ? [] : [`overstayed: ${step.id} of ${name} takes ${inMin(isMs)}, at most ${inMin(mostMs)}`];
  });
}

/** Links to earlier steps, and how long a step may be put off once it could begin. */
function linkFaults({ name, steps }: PlanThread): string[] {
  const faults: string[] = [];
  steps.forEach(({ step, planned }, index) => {
    const before = steps[index - 1];
    if (planned === null) return;
    if (before !== undefined && before.planned !== null && before.step.kind !== 'timed' && before.step.kind !== 'bake') {
      const waitsMs = planned.plannedStartMs - before.planned.plannedEndMs;
      const bearsMs = (step.toleranceMin.lost ?? Infinity) * MINUTE_MS;
      if (waitsMs > bearsMs + ROUND_MS)
        faults.push(`overstayed: ${name} waits ${inMin(waitsMs)} for ${step.id}, at most ${inMin(bearsMs)}`);
    }
    for (const link of step.after ?? []) {
      const to = steps.find((one) => one.step.id === link.step)?.planned;
      if (to === undefined || to === null) continue;
      const lagMs = planned.plannedStartMs - (link.from === 'start' ? to.plannedStartMs : to.plannedEndMs);
      if (lagMs < link.earliestMin * MINUTE_MS - ROUND_MS)
        faults.push(`order: ${step.id} of ${name} is ${inMin(lagMs)} after ${link.step}`);
      if (lagMs > (link.latestMin ?? Infinity) * MINUTE_MS + ROUND_MS)
        faults.push(`overstayed: ${step.id} of ${name} is ${inMin(lagMs)} after ${link.step}`);
    }
  });
  return faults;
}

/** What is ordered is made, whenever that is. */
function orderedFaults(state: FloorState, threads: readonly PlanThread[]): string[] {
  const made = new Map<string, number>();
  // Loads are part of the thread above them.
  const whole = threads.filter((thread) => thread.product !== null && (thread.above === null || thread.above.thread.product === null));
  for (const { product, pieces } of whole) made.set(product?.id ?? '', (made.get(product?.id ?? '') ?? 0) + (pieces ?? 0));
  const wanted = new Map<string, number>();
  for (const { productId, pieces } of Object.values(state.orders)) wanted.set(productId, (wanted.get(productId) ?? 0) + pieces);
  return [...wanted].flatMap(([productId, pieces]) =>
    (made.get(productId) ?? 0) >= pieces ? [] : [`short: ${made.get(productId) ?? 0} of ${pieces} ${productId} are made`],
  );
}

function inMin(ms: number): string {
  return `${Number((ms / MINUTE_MS).toFixed(2))} min`;
}
