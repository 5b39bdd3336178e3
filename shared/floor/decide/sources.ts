import type { FloorState, Workpiece } from '../state.ts';
import { dueOf } from '../due.ts';
import { pastLimitAt } from '../holding.ts';
import { downToTenth } from '../tenths.ts';
import { positionOf, wayOf } from '../way.ts';
import { ancestorsOf, doughLine } from './ancestry.ts';

/** Less than this is what sticks to the pot: what has no more is empty. */
export const EMPTY_G = 0.5;

/** Behind every rank that there is. */
const PAST_LIMIT = 10;

/**
 * The open ferments and preps of a formula that a workpiece can be given from, in the order in which they are drawn on:
 * what was made for it, what is ripe or ready, what has been begun, what is planned; the oldest first. What was made for
 * another dough comes last, and not at all while nobody has begun it. What is past its holding limit comes after everything else: it is refused,
 * and only where nothing else is there.
 */
export function sourcesFor(state: FloorState, workpiece: Workpiece, formulaId: string, atMs: number): readonly Workpiece[] {
  const line = doughLine(state, workpiece.id);
  return Object.values(state.workpieces)
    .filter(
      (source) => source.finishedMs === null && source.formulaId === formulaId && source.kind !== 'batch' && source.id !== workpiece.id,
    )
    .map((source) => {
      const rank = rankOf(state, source, workpiece, line, atMs);
      return { source, rank: rank === null || pastLimitAt(state, source, atMs) === null ? rank : rank + PAST_LIMIT };
    })
    .filter(({ source, rank }) => rank !== null && !ancestorsOf(state, source.id).has(workpiece.id))
    .sort((a, b) => (a.rank ?? 0) - (b.rank ?? 0) || ageKey(a.source) - ageKey(b.source) || (a.source.id < b.source.id ? -1 : 1))
    .map(({ source }) => source);
}

function rankOf(state: FloorState, source: Workpiece, into: Workpiece, line: ReadonlySet<string>, atMs: number): number | null {
  const readiness = readinessOf(state, source, atMs);
  if (source.serves !== null && line.has(source.serves.workpieceId)) return 0;
  const isOthers = source.serves !== null && state.workpieces[source.serves.workpieceId]?.finishedMs === null;
  if (readiness === 'planned') return isOthers || source.serviceDate > into.serviceDate ? null : 3;
  return (readiness === 'ready' ? 1 : 2) + (isOthers ? 3 : 0);
}

function ageKey(source: Workpiece): number {
  return source.stock?.fedMs ?? source.plannedStartMs;
}

function readinessOf(state: FloorState, source: Workpiece, atMs: number): 'ready' | 'begun' | 'planned' {
  if (isPlanned(source)) return 'planned';
  const way = wayOf(state, source);
  const due = dueOf(state, source);
  const isLast = positionOf(way, source) === way.length - 1 && due !== null && due.startedMs !== null;
  return isLast && (source.kind === 'prep' || due.earliestMs <= atMs) ? 'ready' : 'begun';
}

/** Nobody has begun it: what it weighs is what is meant to be. */
export function isPlanned(source: Workpiece): boolean {
  return source.stock === null ? Object.keys(source.steps).length === 0 : source.stock.fedMs === null;
}

/** How much of a source can be had without its seed. */
export function beyondSeedG(source: Workpiece, grams: number): number {
  return downToTenth(Math.max(0, grams - (source.stock?.seedG ?? 0)));
}
