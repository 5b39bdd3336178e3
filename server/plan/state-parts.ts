import type { FloorState } from '../../shared/floor/state.ts';

/** Entries of one part at most: what is copied to another thread at once must not hold up the floor. */
const PART_ENTRIES = 64;

/** A piece of a state on its way to another thread: of a record or list, some of its entries; of anything else, all. */
export interface StatePart {
  readonly key: keyof FloorState;
  readonly value: unknown;
}

/** A state in pieces that each take little time to copy. */
export function* partsOf(state: FloorState): Generator<StatePart, void> {
  for (const key of Object.keys(state) as (keyof FloorState)[]) {
    const value = state[key];
    if (Array.isArray(value)) for (const piece of slices(value as readonly unknown[])) yield { key, value: piece };
    else if (isRecord(value)) for (const piece of slices(Object.entries(value))) yield { key, value: Object.fromEntries(piece) };
    else yield { key, value };
  }
}

/** What the pieces make when each is put to those before it; begin with EMPTY_STATE. */
export function withPart(state: FloorState, { key, value }: StatePart): FloorState {
  const before = state[key];
  // A record that was null so far begins with its first piece.
  if (Array.isArray(value)) return { ...state, [key]: [...(before as readonly unknown[]), ...(value as readonly unknown[])] };
  if (isRecord(value)) return { ...state, [key]: { ...(before as object | null), ...value } };
  return { ...state, [key]: value };
}

function slices<Entry>(entries: readonly Entry[]): readonly (readonly Entry[])[] {
  const all: (readonly Entry[])[] = [];
  for (let from = 0; from < entries.length; from += PART_ENTRIES) all.push(entries.slice(from, from + PART_ENTRIES));
  return all;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
