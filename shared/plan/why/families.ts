import type { BuiltDay, StepPlace } from '../build/built-day.ts';
import type { DaySolution } from '../day/problem.ts';
import type { Amounts } from './least-change.ts';
import type { Cause, Change, Trouble } from './reason.ts';
import { placeOf } from './troubles.ts';

const MINUTE_MS = 60_000;
/** Minutes are said by so many. */
const STEP_MIN = 5;
/** Nobody is asked to come, or to begin a dough, by more minutes than these earlier or later. */
const MOST_MIN = 180;
/** So large a share of an order is left away at first. */
const FIRST_SHARE = 0.25;
/** And never more: then it is rather left out whole. */
const MOST_SHARE = 0.75;

/** Changes of one kind, by how much. */
export interface Family {
  readonly amounts: Amounts;
  readonly change: (amount: number) => Change;
}

/** What changes are sought for. */
export interface Sought {
  readonly trouble: Trouble;
  readonly also: readonly Trouble[];
  readonly cause: Cause | null;
}

export interface FamilyFacts {
  readonly built: BuiltDay;
  readonly solution: DaySolution;
  readonly nowMs: number;
  readonly orders: ReadonlyMap<string, { readonly pieces: number; readonly weight: number }>;
}

/** Kinds of change that could help against a trouble, those that ask least of people first. */
export function familiesFor(facts: FamilyFacts, sought: Sought): readonly Family[] {
  return [...familiesOfCause(facts, sought), ...familiesOfOrder(facts, sought)];
}

function familiesOfCause(facts: FamilyFacts, { trouble, also, cause }: Sought): readonly Family[] {
  const { byMin } = trouble;
  switch (cause?.kind) {
    case 'busy':
      return [
        ...moves(facts, cause.by.batchKey, byMin),
        ...ofResource(facts, cause, byMin),
        ...fewerOf(facts, biggestOrder(facts, cause.by.batchKey, [trouble, ...also])),
      ];
    case 'closed':
      return cause.resource.kind === 'station' ? shifts(cause.resource.id, byMin) : [];
    case 'pinned':
      return moves(facts, cause.at.batchKey, byMin);
    case 'tooShort':
    case 'begun':
    case undefined:
      return [];
  }
}

function familiesOfOrder(facts: FamilyFacts, { trouble, also, cause }: Sought): readonly Family[] {
  if (trouble.kind !== 'late') {
    const batchKey = trouble.batchKey;
    return cause === null ? [] : fewerOf(facts, biggestOrder(facts, batchKey, []));
  }
  const { orderId, byMin } = trouble;
  const isAlone = facts.orders.size < 2;
  return [
    ...fewerOf(facts, orderId),
    ...(isAlone || cause?.kind === 'tooShort' || also.length > 0 ? [] : [one({ kind: 'first', orderId })]),
    // With so many minutes more the day fits as it stands; perhaps fewer do.
    {
      amounts: minutesFrom(byMin, Math.ceil(byMin / STEP_MIN) * STEP_MIN),
      change: (minutes) => ({ kind: 'readyLater', orderId, minutes }),
    },
    one({ kind: 'leaveOut', orderId }),
  ];
}

function ofResource({ built }: FamilyFacts, { resource, at }: Extract<Cause, { kind: 'busy' }>, byMin: number): readonly Family[] {
  if (resource.kind === 'station') return [one({ kind: 'oneMoreHand', stationId: resource.id }), ...shifts(resource.id, byMin)];
  if (resource.kind !== 'vessel') return [];
  const needed = neededOf(built, resource.id, at);
  return [
    {
      amounts: { least: 1, step: 1, most: 4 * needed, guess: needed },
      change: (count) => ({ kind: 'moreVessels', vesselId: resource.id, count }),
    },
  ];
}

/** How many of a vessel a step takes. */
function neededOf({ problem, steps }: BuiltDay, vesselId: string, at: Cause['at']): number {
  const amounts = problem.holds.flatMap(({ from, on }) => {
    const step = steps[from];
    if (step === undefined || !isSamePlace(step, at) || 'choice' in on) return [];
    const resource = problem.resources[on.resource];
    return resource?.kind === 'vessel' && resource.id === vesselId ? [on.amount] : [];
  });
  return Math.max(1, ...amounts);
}

/** Somebody comes earlier or stays longer: everybody, since the dough goes on to others, or at the one station alone. */
function shifts(stationId: string, byMin: number): readonly Family[] {
  const amounts = minutesFrom(byMin);
  return [stationId, null].flatMap((whose): readonly Family[] => [
    { amounts, change: (minutes) => ({ kind: 'openEarlier', stationId: whose, minutes }) },
    { amounts, change: (minutes) => ({ kind: 'openLonger', stationId: whose, minutes }) },
  ]);
}

/** A dough begins earlier or later: its first step, or the first of it that somebody has pinned, which moves with its pin. */
function moves({ built, solution, nowMs }: FamilyFacts, batchKey: string, byMin: number): readonly Family[] {
  const own = built.steps.filter((step) => step.batchKey === batchKey && (step.status === 'ahead' || step.status === 'begun'));
  const pinned = own.find(
    ({ status, activity }) => status === 'ahead' && (built.problem.activities[activity]?.pinnedStartS ?? null) !== null,
  );
  const step = pinned ?? own[0];
  // What has begun cannot begin at another time.
  if (step === undefined || (pinned === undefined && own.some(({ status }) => status === 'begun'))) return [];
  const startMs = built.originMs + (solution.startsS[step.activity] ?? 0) * 1000;
  const mostMin = Math.min(MOST_MIN, Math.floor((startMs - nowMs) / MINUTE_MS));
  const place = placeOf(step);
  const earlier: Family = {
    amounts: { ...minutesFrom(byMin), most: mostMin },
    change: (minutes) => ({ kind: 'beginEarlier', ...place, minutes, startMs: startMs - minutes * MINUTE_MS }),
  };
  const later: Family = {
    amounts: minutesFrom(byMin),
    change: (minutes) => ({ kind: 'beginLater', ...place, minutes, startMs: startMs + minutes * MINUTE_MS }),
  };
  // Whatever is not pinned was free to come later, and would have.
  return pinned === undefined ? [earlier] : [earlier, later];
}

function minutesFrom(guess: number, most = MOST_MIN): Amounts {
  return { least: STEP_MIN, step: STEP_MIN, most, guess };
}

function fewerOf({ orders }: FamilyFacts, orderId: string | null): readonly Family[] {
  const pieces = orderId === null ? 0 : (orders.get(orderId)?.pieces ?? 0);
  if (orderId === null || pieces < 2) return [];
  return [
    {
      amounts: { least: 1, step: 1, most: Math.floor(pieces * MOST_SHARE), guess: pieces * FIRST_SHARE },
      change: (fewer) => ({ kind: 'fewerPieces', orderId, pieces: pieces - fewer }),
    },
  ];
}

/** Of the orders that a batch serves the one with most pieces, those in trouble left aside; null where there is no other. */
function biggestOrder({ built, orders }: FamilyFacts, batchKey: string, troubles: readonly Trouble[]): string | null {
  const inTrouble = new Set(troubles.flatMap((trouble) => (trouble.kind === 'late' ? [trouble.orderId] : [])));
  const served = built.problem.goals.flatMap(({ activity }, goal) => {
    const orderId = built.goalOrders[goal];
    return orderId !== undefined && built.steps[activity]?.batchKey === batchKey && !inTrouble.has(orderId) ? [orderId] : [];
  });
  return [...new Set(served)].sort((a, b) => (orders.get(b)?.pieces ?? 0) - (orders.get(a)?.pieces ?? 0))[0] ?? null;
}

function one(change: Change): Family {
  return { amounts: { least: 1, step: 1, most: 1, guess: 1 }, change: () => change };
}

function isSamePlace(one: StepPlace, other: Cause['at']): boolean {
  return one.batchKey === other.batchKey && one.cut === other.cut && one.load === other.load && one.stepId === other.stepId;
}
