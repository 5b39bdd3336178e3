import { endsByNext, targetMin, type Step } from '../../shared/documents/method.ts';
import { dueOf } from '../../shared/floor/due.ts';
import { decksOf } from '../../shared/floor/slots.ts';
import type { FloorState, StepLife, Workpiece } from '../../shared/floor/state.ts';
import { placeKey, type Bar, type BarPin, type Standing, type StepPlace, type StepResource } from './sheet-bar.ts';
import { latestStartMs, type Begun } from './sheet-latest.ts';
import type { LineOf } from './sheet-lines.ts';
import type { Planned } from './sheet-places.ts';

const MINUTE_MS = 60_000;

/** A step that stands less than this from where it stood has not moved. */
export const MOVED_MS = 2 * MINUTE_MS;

/** What all lines of one sheet are reckoned from. */
export interface LineContext {
  readonly state: FloorState;
  readonly nowMs: number;
  /** The plan in force. */
  readonly kept: ReadonlyMap<string, Planned>;
  /** What is drawn ahead of NOW: the plan in force, or a proposal. */
  readonly ahead: ReadonlyMap<string, Planned>;
  /** Cuts and loads that are still to be made, by what they are parts of. */
  readonly parts: ReadonlyMap<string, readonly StepPlace[]>;
  readonly isTried: boolean;
  readonly moved: ReadonlyMap<string, number>;
  readonly pins: ReadonlyMap<string, BarPin>;
}

/** From where a line goes on where no plan says it. */
interface Cursor {
  atMs: number;
}

/**
 * The steps of a line with their times, first to last. A line whose dough is in the plan shows what the plan says, any
 * other goes on by its target times. `above` are the steps of the line that it was divided off, or is to be.
 */
export function lineBars(context: LineContext, line: LineOf, isPlanned: boolean, above: readonly Bar[]): readonly Bar[] {
  const cursor: Cursor = { atMs: firstMs(context, line, above) };
  const bars: Bar[] = [];
  for (const step of line.way) {
    const bar = barOf(context, line, step, isPlanned, cursor);
    if (bar === null) continue;
    cursor.atMs = bar.toMs;
    const before = bars.at(-1);
    if (before !== undefined && isWaitedFor(before, bar)) bars[bars.length - 1] = { ...before, toMs: bar.fromMs };
    bars.push({ ...bar, latestStartMs: latestFor(line, bars.length === 0 ? above : bars, bar) });
  }
  return bars;
}

/** A rest that runs lasts until what ends it is planned to begin, beyond its own target too. */
function isWaitedFor(before: Bar, bar: Bar): boolean {
  return before.standing === 'begun' && endsByNext(before.step) && before.toMs < bar.fromMs;
}

function latestFor(line: LineOf, before: readonly Bar[], bar: Bar): number | null {
  if (bar.standing === 'done' || bar.standing === 'begun') return null;
  // Only what the step follows, and what it is linked to, counts.
  const linked = bar.step.after?.map((link) => link.step) ?? [];
  const counts = before.filter((earlier, index) => index === before.length - 1 || linked.includes(earlier.stepId));
  return latestStartMs(
    bar.step,
    before.at(-1)?.step ?? null,
    counts.map((earlier) => begunOf(line, earlier)),
  );
}

function begunOf({ workpiece }: LineOf, { step, fromMs, toMs, pieces }: Bar): Begun {
  const pins = workpiece?.steps[step.id]?.pins ?? null;
  const moreMin = workpiece?.steps[step.id]?.moreMin ?? 0;
  const factor = pins?.factor ?? 1;
  const latestMin = pins === null ? step.minutes.latest : pins.latestMin;
  return {
    stepId: step.id,
    fromMs,
    toMs,
    targetMin: (pins?.targetMin ?? targetMin(step, pieces)) * factor + moreMin,
    latestMin: latestMin === undefined ? null : latestMin * factor,
  };
}

/** When the first step of a line that no plan names would begin. */
function firstMs({ state, nowMs }: LineContext, { workpiece }: LineOf, above: readonly Bar[]): number {
  if (workpiece === null) return above.at(-1)?.toMs ?? nowMs;
  const isBegun = Object.keys(workpiece.steps).length > 0;
  return isBegun ? workpiece.readyMs : (dueOf(state, workpiece)?.dueMs ?? workpiece.readyMs);
}

function barOf(context: LineContext, line: LineOf, step: Step, isPlanned: boolean, cursor: Cursor): Bar | null {
  const place = { ownerId: line.ownerId, cut: line.cut, load: line.load, stepId: step.id };
  const key = placeKey(place);
  const { workpiece } = line;
  const life = workpiece?.steps[step.id];
  const ahead = context.ahead.get(key) ?? null;
  const common = { ...place, key, tag: line.tag, step, pieces: line.pieces, latestStartMs: null, pin: context.pins.get(key) ?? null };
  if (life !== undefined && workpiece !== null) {
    // What was done before it was divided off stands with what it came of.
    if (isOfParent(context.state, workpiece, step.id)) return null;
    const times = livedTimes(context, workpiece, step, life, cursor);
    if (times === null) return null;
    const resources = joined((context.kept.get(key) ?? ahead)?.resources ?? [], livedResources(context.state, workpiece, life, step));
    return { ...common, ...times, standing: life.status === 'started' ? 'begun' : 'done', wasMs: null, resources };
  }
  if (workpiece !== null && workpiece.finishedMs !== null) return null;
  if (ahead === null && isPlanned) return null;
  const lengthMs = targetMin(step, line.pieces) * MINUTE_MS;
  if (ahead === null) {
    const fromMs = Math.max(cursor.atMs, context.nowMs);
    return { ...common, fromMs, toMs: fromMs + lengthMs, standing: 'planned', wasMs: null, resources: namedResources(step) };
  }
  const { fromMs, resources } = ahead;
  const kept = context.kept.get(key)?.fromMs ?? null;
  const isAsKept = kept !== null && Math.abs(kept - fromMs) < MOVED_MS;
  const standing: Standing = context.isTried && !isAsKept ? 'proposed' : 'planned';
  const beforeMs = context.isTried ? kept : (context.moved.get(key) ?? null);
  const wasMs = beforeMs !== null && Math.abs(beforeMs - fromMs) >= MOVED_MS ? beforeMs : null;
  return { ...common, fromMs, toMs: Math.max(fromMs, ahead.toMs ?? fromMs + lengthMs), standing, wasMs, resources };
}

function isOfParent(state: FloorState, workpiece: Workpiece, stepId: string): boolean {
  const parent = workpiece.kind === 'load' && workpiece.parentId !== null ? state.workpieces[workpiece.parentId] : undefined;
  return parent?.steps[stepId] !== undefined;
}

/** When a step that was begun ran, or how long it will run by what is known; null for one that was left out. */
function livedTimes(
  { state, nowMs }: LineContext,
  workpiece: Workpiece,
  step: Step,
  life: StepLife,
  cursor: Cursor,
): { readonly fromMs: number; readonly toMs: number } | null {
  if (life.status === 'skipped') return null;
  if (life.status === 'done') {
    const toMs = life.endedMs ?? life.startedMs ?? cursor.atMs;
    // What was closed because a later step was seen has no start of its own.
    return { fromMs: Math.min(life.startedMs ?? toMs, toMs), toMs };
  }
  const fromMs = life.startedMs ?? cursor.atMs;
  const due = dueOf(state, workpiece);
  const dueMs = due?.step.id === step.id ? due.dueMs : fromMs + targetMin(step, workpiece.pieces) * MINUTE_MS;
  return { fromMs, toMs: Math.max(dueMs, nowMs, fromMs) };
}

/** What a workpiece holds while a step of it runs, and who works on it. */
function livedResources(state: FloorState, workpiece: Workpiece, life: StepLife, step: Step): readonly StepResource[] {
  const station = life.stationId === null || step.kind !== 'hands' ? [] : [life.stationId, ...life.helperIds];
  const resources: StepResource[] = station.map((id) => ({ kind: 'station', id }));
  if (life.status !== 'started') return resources;
  if (workpiece.mixerId !== null) resources.push({ kind: 'mixer', id: workpiece.mixerId });
  if (workpiece.placeId !== null && step.kind === 'timed') resources.push({ kind: 'restPlace', id: workpiece.placeId });
  const decks = state.kitchen === null ? [] : decksOf(state.kitchen.document);
  for (const deck of decks)
    if (deck.slots.some((slot) => workpiece.slotIds.includes(slot.id))) resources.push({ kind: 'deck', id: deck.id });
  return resources;
}

/** Without a plan only what the method itself names is known. */
function namedResources(step: Step): readonly StepResource[] {
  const station: readonly StepResource[] =
    step.station === undefined || step.kind !== 'hands' ? [] : [{ kind: 'station', id: step.station }];
  return step.place === undefined || step.kind !== 'timed' ? station : [...station, { kind: 'restPlace', id: step.place }];
}

/** What the plan said and what really is: of one kind, what really is. */
function joined(planned: readonly StepResource[], real: readonly StepResource[]): readonly StepResource[] {
  const kinds = new Set(real.map(({ kind }) => kind));
  return [...planned.filter(({ kind }) => !kinds.has(kind)), ...real];
}
