import type { BuiltDay, StepPlace } from '../build/built-day.ts';
import type { DaySolution } from '../day/problem.ts';
import type { Cause, Reason, Remedy, Trouble } from './reason.ts';
import { whatHolds } from './what-holds.ts';

/** Troubles that are explained, the worst first; more would not be read. */
const MOST_REASONS = 3;
/** Remedies that are shown for one of them. */
const MOST_REMEDIES = 4;
/** How much earlier somebody is asked to be there, or a dough to begin, in minutes, the least first. */
const EARLIER_MIN = [10, 20, 30, 45, 60, 90, 120] as const;
/** Shares of an order that may be left away, the least first. */
const FEWER_SHARES = [0.1, 0.2, 0.3, 0.5, 0.75] as const;
/** Less than this is nothing. */
const NOTHING_MIN = 1;
const MINUTE_MS = 60_000;

type Change = Remedy['change'];

/** What a day comes to with a change: minutes late by order, and minutes by which doughs are spoiled; null where it cannot be made at all. */
export interface TriedDay {
  readonly lateMin: ReadonlyMap<string, number>;
  readonly spoilMin: number;
}

export interface WhyTools {
  /** Plans the day anew with a change, with as much search as there is time for. */
  readonly tryWith: (change: Change) => TriedDay | null;
  readonly orders: ReadonlyMap<string, { readonly pieces: number; readonly productId: string }>;
  /** Most changes that are tried for one trouble. */
  readonly tries: number;
}

/**
 * Why a day does not fit, and what would make it fit: each trouble is followed back to what holds it, and changes about that
 * are tried, the smallest first, by planning the day anew with them. What is named as a remedy was planned and had no
 * trouble left of this kind, or clearly less; nothing is said that was not tried. Pure; deterministic where `tryWith` is.
 */
export function whyNot(built: BuiltDay, solution: DaySolution, tools: WhyTools): readonly Reason[] {
  return troublesOf(built, solution)
    .slice(0, MOST_REASONS)
    .map(({ trouble, activity, minutes }) => {
      const cause = causeOf(built, solution, activity);
      return { trouble, cause, remedies: remediesFor(built, solution, { trouble, cause, minutes }, tools) };
    });
}

interface Found {
  readonly trouble: Trouble;
  readonly activity: number;
  readonly minutes: number;
}

function troublesOf(built: BuiltDay, solution: DaySolution): Found[] {
  const byOrder = new Map<string, Found>();
  for (const { goal, byS } of solution.late) {
    const orderId = built.goalOrders[goal];
    const activity = built.problem.goals[goal]?.activity;
    const minutes = byS / 60;
    if (orderId === undefined || activity === undefined || minutes < NOTHING_MIN) continue;
    if (minutes <= (byOrder.get(orderId)?.minutes ?? 0)) continue;
    byOrder.set(orderId, { trouble: { kind: 'late', orderId, byMin: minutes }, activity, minutes });
  }
  const spoiled = solution.spoiled.flatMap(({ lag, byS }): Found[] => {
    const to = built.problem.lags[lag]?.to;
    const step = to === undefined ? undefined : built.steps[to];
    if (to === undefined || step === undefined) return [];
    return [{ trouble: { kind: 'spoils', ...placeOf(step), byMin: byS / 60 }, activity: to, minutes: byS / 60 }];
  });
  const pins = solution.pinsBroken.flatMap((activity): Found[] => {
    const step = built.steps[activity];
    const pinnedS = built.problem.activities[activity]?.pinnedStartS;
    if (step === undefined || pinnedS === undefined || pinnedS === null) return [];
    const minutes = Math.abs((solution.startsS[activity] ?? 0) - pinnedS) / 60;
    return [{ trouble: { kind: 'pinBroken', ...placeOf(step), atMs: built.originMs + pinnedS * 1000 }, activity, minutes }];
  });
  const late = [...byOrder.values()].sort((a, b) => b.minutes - a.minutes);
  return [...spoiled.sort((a, b) => b.minutes - a.minutes), ...pins, ...late];
}

function causeOf(built: BuiltDay, solution: DaySolution, activity: number): Cause | null {
  const holding = whatHolds(built.problem, solution, activity);
  if (holding === null) return null;
  const step = built.steps[holding.at];
  if (step === undefined) return null;
  const at = placeOf(step);
  const startMs = built.originMs + (solution.startsS[holding.at] ?? 0) * 1000;
  switch (holding.kind) {
    case 'busy': {
      const resource = built.problem.resources[holding.resource];
      const by = built.steps[holding.by];
      if (resource === undefined || by === undefined) return null;
      return {
        kind: 'busy',
        at,
        resource: { kind: resource.kind, id: resource.id },
        by: placeOf(by),
        untilMs: built.originMs + holding.untilS * 1000,
      };
    }
    case 'closed': {
      const resource = built.problem.resources[holding.resource];
      if (resource === undefined) return null;
      return { kind: 'closed', at, resource: { kind: resource.kind, id: resource.id }, untilMs: built.originMs + holding.untilS * 1000 };
    }
    case 'released':
      return { kind: 'tooShort', at, beginsMs: startMs };
    case 'pinned':
      return { kind: 'pinned', at, atMs: startMs };
    case 'begun':
      return { kind: 'begun', at };
  }
}

interface Sought {
  readonly trouble: Trouble;
  readonly cause: Cause | null;
  readonly minutes: number;
}

/** Families of changes, each tried from the least on until one of it helps. */
function remediesFor(built: BuiltDay, solution: DaySolution, sought: Sought, tools: WhyTools): Remedy[] {
  const before = { late: sum(lateByOrder(built, solution).values()), spoil: sum(solution.spoiled.map(({ byS }) => byS / 60)) };
  const remedies: Remedy[] = [];
  let left = tools.tries;
  for (const family of familiesFor(built, solution, sought, tools)) {
    for (const change of family) {
      if (left === 0 || remedies.length >= MOST_REMEDIES) return remedies;
      left -= 1;
      const tried = tools.tryWith(change);
      if (tried === null) continue;
      const leftMin = sum(tried.lateMin.values());
      if (!helps(sought, tried) || leftMin + tried.spoilMin > before.late + before.spoil) continue;
      remedies.push({ change, leftMin });
      break;
    }
  }
  return remedies.sort((a, b) => a.leftMin - b.leftMin);
}

/** The trouble is gone; the day as a whole is held against what it was by the caller. */
function helps({ trouble }: Sought, tried: TriedDay): boolean {
  switch (trouble.kind) {
    case 'late':
      return (tried.lateMin.get(trouble.orderId) ?? 0) < NOTHING_MIN;
    case 'spoils':
      return tried.spoilMin < NOTHING_MIN;
    case 'pinBroken':
      // A broken pin is helped by another pin alone; its families are about what holds it.
      return tried.spoilMin < NOTHING_MIN && sum(tried.lateMin.values()) < NOTHING_MIN;
  }
}

function familiesFor(built: BuiltDay, solution: DaySolution, { trouble, cause, minutes }: Sought, { orders }: WhyTools): Change[][] {
  const families: Change[][] = [];
  if (cause?.kind === 'busy') {
    const step = firstAheadOf(built, cause.by.batchKey);
    const startMs = step === null ? 0 : built.originMs + (solution.startsS[step.activity] ?? 0) * 1000;
    if (step !== null) {
      families.push(
        EARLIER_MIN.map((earlier): Change => ({
          kind: 'beginEarlier',
          ...placeOf(step),
          minutes: earlier,
          startMs: startMs - earlier * MINUTE_MS,
        })),
      );
    }
    const ordersOfBlocker = ordersServedBy(built, cause.by.batchKey);
    for (const orderId of ordersOfBlocker.slice(0, 2)) families.push(fewerOf(orderId, orders));
  }
  if ((cause?.kind === 'busy' || cause?.kind === 'closed') && cause.resource.kind === 'station') {
    const stationId = cause.resource.id;
    if (cause.kind === 'busy') families.push([{ kind: 'oneMoreHand', stationId }]);
    families.push(EARLIER_MIN.map((earlier): Change => ({ kind: 'openEarlier', stationId, minutes: earlier })));
  }
  if (trouble.kind === 'late') {
    families.push(fewerOf(trouble.orderId, orders));
    const later = Math.ceil(minutes / 5) * 5;
    families.push([later, later + 5, later + 15].map((wait): Change => ({ kind: 'readyLater', orderId: trouble.orderId, minutes: wait })));
    families.push([{ kind: 'leaveOut', orderId: trouble.orderId }]);
  }
  return families;
}

/** Fewer pieces of an order, by steps that somebody would say. */
function fewerOf(orderId: string, orders: WhyTools['orders']): Change[] {
  const pieces = orders.get(orderId)?.pieces ?? 0;
  const kept = FEWER_SHARES.map((share) => Math.floor(pieces * (1 - share))).filter((count) => count >= 1 && count < pieces);
  return [...new Set(kept)].map((count): Change => ({ kind: 'fewerPieces', orderId, pieces: count }));
}

function ordersServedBy(built: BuiltDay, batchKey: string): string[] {
  const ids = built.problem.goals.flatMap((goal, index) => {
    const orderId = built.goalOrders[index];
    return orderId !== undefined && built.steps[goal.activity]?.batchKey === batchKey ? [orderId] : [];
  });
  return [...new Set(ids)];
}

/** The first step of a batch that is still ahead; null where it has begun already. */
function firstAheadOf(built: BuiltDay, batchKey: string): BuiltDay['steps'][number] | null {
  const own = built.steps.filter((step) => step.batchKey === batchKey && (step.status === 'ahead' || step.status === 'begun'));
  const [first] = own;
  return first === undefined || own.some(({ status }) => status === 'begun') ? null : first;
}

function lateByOrder(built: BuiltDay, { late }: DaySolution): ReadonlyMap<string, number> {
  const byOrder = new Map<string, number>();
  for (const { goal, byS } of late) {
    const orderId = built.goalOrders[goal];
    if (orderId !== undefined) byOrder.set(orderId, Math.max(byOrder.get(orderId) ?? 0, byS / 60));
  }
  return byOrder;
}

function placeOf({ batchKey, cut, load, stepId }: StepPlace): Pick<StepPlace, 'batchKey' | 'stepId'> & { cut?: number; load?: number } {
  return { batchKey, stepId, ...(cut === undefined ? {} : { cut }), ...(load === undefined ? {} : { load }) };
}

function sum(numbers: Iterable<number>): number {
  let total = 0;
  for (const number of numbers) total += number;
  return total;
}
