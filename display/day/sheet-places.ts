import type { PlannedStep } from '../../shared/floor/events.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import type { ProposalDone } from '../../shared/plan/plan-api.ts';
import { placeKey, type BarPin, type StepPlace, type StepResource } from './sheet-bar.ts';

/** Of a proposal, what the sheet draws. */
export type SheetProposal = Pick<ProposalDone, 'batches' | 'steps' | 'warnings' | 'ask'>;

/** When a step is to begin and end by a plan; the end is missing in older plans. */
export interface Planned {
  readonly place: StepPlace;
  readonly fromMs: number;
  readonly toMs: number | null;
  readonly resources: readonly StepResource[];
}

/** A place with what was divided since followed down to the workpiece that it has become. */
export function settledPlace(state: FloorState, place: StepPlace): StepPlace {
  const { cut, load, stepId } = place;
  const owner = state.workpieces[place.ownerId];
  if (owner === undefined) return place;
  if (cut !== null) {
    const child = childAt(state, owner, 'cut', cut);
    return child === undefined ? place : settledPlace(state, { ownerId: child.id, cut: null, load, stepId });
  }
  const child = load === null ? undefined : childAt(state, owner, 'load', load);
  return child === undefined ? place : { ownerId: child.id, cut: null, load: null, stepId };
}

function childAt(state: FloorState, parent: Workpiece, kind: Workpiece['kind'], index: number): Workpiece | undefined {
  return parent.childIds.flatMap((id) => state.workpieces[id] ?? []).filter((child) => child.kind === kind)[index];
}

/** The steps of the plan in force, by the keys of their places. */
export function inForce(state: FloorState): ReadonlyMap<string, Planned> {
  const steps = Object.values(state.plan?.steps ?? {}).flat();
  return byPlace(
    state,
    steps.map((step) => ({ step, ownerId: step.workpieceId })),
  );
}

/** The steps of a proposal, by the keys of their places. */
export function proposedSteps(state: FloorState, proposal: SheetProposal): ReadonlyMap<string, Planned> {
  return byPlace(
    state,
    proposal.steps.map((step) => ({ step, ownerId: step.batchKey })),
  );
}

interface Named {
  readonly step: Pick<PlannedStep, 'cut' | 'load' | 'stepId' | 'plannedStartMs' | 'plannedEndMs' | 'resources'>;
  readonly ownerId: string;
}

function byPlace(state: FloorState, steps: readonly Named[]): ReadonlyMap<string, Planned> {
  const found = new Map<string, Planned>();
  const isSettled = new Set<string>();
  for (const { step, ownerId } of steps) {
    const place = settledPlace(state, { ownerId, cut: step.cut ?? null, load: step.load ?? null, stepId: step.stepId });
    const key = placeKey(place);
    // What was planned since for the cut itself comes before what was planned for it while it was still part of the dough.
    const isOwn = place.ownerId === ownerId;
    if (isSettled.has(key) && !isOwn) continue;
    if (isOwn) isSettled.add(key);
    found.set(key, { place, fromMs: step.plannedStartMs, toMs: step.plannedEndMs ?? null, resources: step.resources });
  }
  return found;
}

/** Where the last change of the plan moved steps from, by the keys of their places. */
export function movedFrom(state: FloorState): ReadonlyMap<string, number> {
  return new Map(
    (state.plan?.moved ?? []).map(({ workpieceId, cut, load, stepId, fromMs }) => [
      placeKey(settledPlace(state, { ownerId: workpieceId, cut: cut ?? null, load: load ?? null, stepId })),
      fromMs,
    ]),
  );
}

/** What is fixed, on the floor or for the day that is tried, by the keys of the places. */
export function pinsByPlace(state: FloorState, proposal: SheetProposal | null): ReadonlyMap<string, BarPin> {
  const pins = new Map<string, BarPin>();
  for (const pin of Object.values(state.pins)) {
    if (pin.kind !== 'startsAt') continue;
    const { workpieceId, cut, load, stepId } = pin;
    const place = settledPlace(state, { ownerId: workpieceId, cut: cut ?? null, load: load ?? null, stepId });
    pins.set(placeKey(place), { id: pin.id, startMs: pin.startMs });
  }
  for (const { key, startMs } of proposal?.ask.pins ?? []) pins.set(settledKey(state, key), { id: null, startMs });
  return pins;
}

/** A key as the planner wrote it, followed down to what has been divided since. */
export function settledKey(state: FloorState, key: string): string {
  const [ownerId = '', cut = '', load = '', stepId = ''] = key.split('|');
  const number = (text: string): number | null => (text === '' ? null : Number(text));
  return placeKey(settledPlace(state, { ownerId, cut: number(cut), load: number(load), stepId }));
}
