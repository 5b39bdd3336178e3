import type { FloorState } from '../../shared/floor/state.ts';

/** Entries of one part at most: what is copied to another thread at once must not hold up the floor. */
export const PART_ENTRIES = 32;

/** A piece of a state on its way to another thread: of a record or list, some of its entries; of anything else, all. */
export interface StatePart {
  readonly key: keyof FloorState;
  /** Of a plan, which comes without them first, some of its steps. */
  readonly within?: 'steps';
  readonly value: unknown;
}

/** A state in pieces that each take little time to copy. */
export function* partsOf(state: FloorState): Generator<StatePart, void> {
  for (const key of Object.keys(state) as (keyof FloorState)[]) {
    const value = state[key];
    if (key === 'plan') yield* partsOfPlan(state.plan);
    else if (Array.isArray(value)) for (const piece of slices(value as readonly unknown[])) yield { key, value: piece };
    else if (isRecord(value)) for (const piece of recordSlices(value)) yield { key, value: piece };
    else yield { key, value };
  }
}

function* partsOfPlan(plan: FloorState['plan']): Generator<StatePart, void> {
  const key = 'plan';
  yield { key, value: plan === null ? null : { ...plan, steps: {} } };
  for (const value of recordSlices(plan?.steps ?? {})) yield { key, within: 'steps', value };
}

/** What the pieces make when each is put to those before it; begin with EMPTY_STATE. */
export function withPart(state: FloorState, { key, within, value }: StatePart): FloorState {
  if (within !== undefined) {
    const { plan } = state;
    return plan === null ? state : { ...state, plan: { ...plan, steps: { ...plan.steps, ...(value as typeof plan.steps) } } };
  }
  const before = state[key];
  // A record that was null so far begins with its first piece.
  if (Array.isArray(value)) return { ...state, [key]: [...(before as readonly unknown[]), ...(value as readonly unknown[])] };
  if (isRecord(value)) return { ...state, [key]: { ...(before as object | null), ...value } };
  return { ...state, [key]: value };
}

function recordSlices(record: Readonly<Record<string, unknown>>): readonly Readonly<Record<string, unknown>>[] {
  return slices(Object.entries(record)).map((piece) => Object.fromEntries(piece));
}

function slices<Entry>(entries: readonly Entry[]): readonly (readonly Entry[])[] {
  const all: (readonly Entry[])[] = [];
  for (let from = 0; from < entries.length; from += PART_ENTRIES) all.push(entries.slice(from, from + PART_ENTRIES));
  return all;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
