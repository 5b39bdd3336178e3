import { MOST_WARNINGS, type PlanWarning } from '../../../shared/floor/events.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { BuiltDay, StepPlace } from '../../../shared/plan/build/built-day.ts';
import type { DaySolution } from '../../../shared/plan/day/problem.ts';
import type { ProposalDone, ProposedWarning } from '../../../shared/plan/plan-api.ts';
import { lateByOrder } from './figures.ts';
import { edgeMs, placeKey, spoilsFromMs, waitingStep } from './place-of-day.ts';

const MINUTE_MS = 60_000;

/** What a dough or pin is short of, before it is said in the terms of a proposal or of the floor. */
interface SpoiledPlace {
  readonly place: StepPlace;
  readonly atMs: number;
  readonly byMin: number;
}

/** The orders that will be late, the latest first. */
export function lateOrders(state: FloorState, built: BuiltDay, solution: DaySolution): ProposalDone['late'] {
  return [...lateByOrder(built, solution)]
    .map(([orderId, byMs]) => ({ orderId, readyMs: (state.orders[orderId]?.readyMs ?? 0) + byMs, byMin: byMs / MINUTE_MS }))
    .sort((a, b) => b.byMin - a.byMin);
}

/** What will not be right with a day that is proposed for a service date, the worst kind first. */
export function proposedWarnings(
  state: FloorState,
  built: BuiltDay,
  solution: DaySolution,
  serviceDate: string,
): readonly ProposedWarning[] {
  return [
    ...spoiledPlaces(built, solution).map(({ place, atMs, byMin }): ProposedWarning => ({ kind: 'spoils', ...named(place), atMs, byMin })),
    ...orderWarnings(state, built, solution, [...state.openDates, serviceDate]),
    ...solution.pinsBroken.flatMap((activity): ProposedWarning[] => {
      const place = built.steps[activity];
      return place === undefined
        ? []
        : [{ kind: 'pinBroken', key: placeKey(place), atMs: edgeMs(built, solution.startsS, activity, 'start') }];
    }),
  ];
}

/** What will not be right with the plan in force, as the floor keeps it. */
export function planWarnings(state: FloorState, built: BuiltDay, solution: DaySolution): readonly PlanWarning[] {
  const spoils = spoiledPlaces(built, solution).flatMap(({ place, atMs, byMin }): PlanWarning[] => {
    const { batchKey: _key, ...below } = named(place);
    return place.workpieceId === null ? [] : [{ kind: 'spoils', workpieceId: place.workpieceId, ...below, atMs, byMin }];
  });
  const broken = solution.pinsBroken.flatMap((activity): PlanWarning[] => {
    const place = built.steps[activity];
    const pin = place === undefined ? undefined : pinOf(state, place);
    return pin === undefined ? [] : [{ kind: 'pinBroken', pinId: pin.id, atMs: edgeMs(built, solution.startsS, activity, 'start') }];
  });
  return [...spoils, ...orderWarnings(state, built, solution, state.openDates), ...broken].slice(0, MOST_WARNINGS);
}

function spoiledPlaces(built: BuiltDay, solution: DaySolution): readonly SpoiledPlace[] {
  // Several lags may bound one rest: it is said once, as the worst of them has it.
  const byPlace = new Map<string, SpoiledPlace>();
  for (const { lag, byS } of solution.spoiled) {
    const place = waitingStep(built, lag);
    if (place === null) continue;
    const key = placeKey(place);
    const byMin = byS / 60;
    if ((byPlace.get(key)?.byMin ?? 0) < byMin) byPlace.set(key, { place, atMs: spoilsFromMs(built, solution, lag), byMin });
  }
  return [...byPlace.values()].sort((a, b) => b.byMin - a.byMin);
}

type OrderWarning = Extract<PlanWarning, { kind: 'late' | 'short' }>;

/** Orders that will be late; and what nothing is made for, on days that are planned: of others it is no news. */
function orderWarnings(
  state: FloorState,
  built: BuiltDay,
  solution: DaySolution,
  plannedDates: readonly string[],
): readonly OrderWarning[] {
  const short = built.orders.short.filter(({ orderId }) => plannedDates.includes(state.orders[orderId]?.serviceDate ?? ''));
  return [
    ...lateOrders(state, built, solution).map(({ orderId, readyMs, byMin }): OrderWarning => ({
      kind: 'late',
      orderId,
      atMs: readyMs,
      byMin,
    })),
    ...short.map(({ orderId, pieces }): OrderWarning => ({ kind: 'short', orderId, pieces })),
  ];
}

function named({
  batchKey,
  cut,
  load,
  stepId,
}: StepPlace): Pick<Extract<ProposedWarning, { kind: 'spoils' }>, 'batchKey' | 'cut' | 'load' | 'stepId'> {
  return { batchKey, ...(cut === undefined ? {} : { cut }), ...(load === undefined ? {} : { load }), stepId };
}

function pinOf(state: FloorState, place: StepPlace): { readonly id: string } | undefined {
  return Object.values(state.pins).find(
    (pin) =>
      pin.kind === 'startsAt' &&
      pin.workpieceId === place.workpieceId &&
      pin.stepId === place.stepId &&
      pin.cut === place.cut &&
      pin.load === place.load,
  );
}
