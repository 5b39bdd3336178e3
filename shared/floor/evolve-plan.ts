import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent, PlannedStep } from './events.ts';
import type { FloorState } from './state.ts';
import { wayOf } from './way.ts';

type PlanEvent = EventOf<'orderPlaced' | 'orderWithdrawn' | 'standingAdopted' | 'pinSet' | 'pinLifted' | 'planAdopted'>;

const TYPES: ReadonlySet<string> = new Set<PlanEvent['type']>([
  'orderPlaced',
  'orderWithdrawn',
  'standingAdopted',
  'pinSet',
  'pinLifted',
  'planAdopted',
]);

/** Whether the event is about orders, pins or the plan. */
export function isPlanEvent(event: FloorEvent): event is PlanEvent {
  return TYPES.has(event.type);
}

/** What orders, pins and plans change. */
export function evolvePlan(state: FloorState, event: PlanEvent): FloorState {
  switch (event.type) {
    case 'orderPlaced':
      return { ...state, orders: { ...state.orders, [event.order.id]: event.order } };
    case 'orderWithdrawn':
      return {
        ...state,
        orders: without(state.orders, [event.orderId]),
        // What was to come first of all is no longer wanted.
        pins: Object.fromEntries(Object.entries(state.pins).filter(([, pin]) => pin.kind !== 'first' || pin.orderId !== event.orderId)),
      };
    case 'standingAdopted':
      return { ...state, standing: { version: event.version, document: event.standing } };
    case 'pinSet':
      return { ...state, pins: { ...state.pins, [event.pin.id]: event.pin } };
    case 'pinLifted':
      return { ...state, pins: without(state.pins, [event.pinId]) };
    case 'planAdopted':
      return planAdopted(state, event);
    default:
      return unreachable(event);
  }
}

function planAdopted(state: FloorState, event: EventOf<'planAdopted'>): FloorState {
  const before = event.isWhole ? {} : (state.plan?.steps ?? {});
  const steps: Record<string, readonly PlannedStep[]> = { ...before };
  const workpieces = { ...state.workpieces };
  for (const [workpieceId, starts] of byWorkpiece(event.starts)) {
    const replaced = new Set(starts.map(placeOf));
    steps[workpieceId] = [...(steps[workpieceId] ?? []).filter((step) => !replaced.has(placeOf(step))), ...starts];
    const workpiece = workpieces[workpieceId];
    // A plan moves what has not begun; what runs is where it is.
    if (workpiece === undefined || Object.keys(workpiece.steps).length > 0) continue;
    const firstId = wayOf(state, workpiece)[0]?.id;
    const first = starts.find((start) => start.cut === undefined && start.load === undefined && start.stepId === firstId);
    if (first === undefined) continue;
    const { plannedStartMs } = first;
    workpieces[workpieceId] = { ...workpiece, plannedStartMs, readyMs: plannedStartMs, call: null };
  }
  return {
    ...state,
    workpieces,
    plan: {
      planId: event.planId,
      madeMs: event.isWhole ? (event.atMs ?? null) : (state.plan?.madeMs ?? null),
      steps,
      moved: event.moved,
      movedMs: event.atMs ?? null,
      warnings: event.warnings,
    },
  };
}

function byWorkpiece(starts: readonly PlannedStep[]): ReadonlyMap<string, PlannedStep[]> {
  const groups = new Map<string, PlannedStep[]>();
  for (const start of starts) {
    const group = groups.get(start.workpieceId);
    if (group === undefined) groups.set(start.workpieceId, [start]);
    else group.push(start);
  }
  return groups;
}

/** A step's place below its workpiece: cut, load and step. */
function placeOf({ cut, load, stepId }: PlannedStep): string {
  return `${cut ?? ''}/${load ?? ''}/${stepId}`;
}

function without<Value>(record: Readonly<Record<string, Value>>, ids: readonly string[]): Readonly<Record<string, Value>> {
  return Object.fromEntries(Object.entries(record).filter(([id]) => !ids.includes(id)));
}
