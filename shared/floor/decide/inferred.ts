import { beginsByItself } from '../../documents/method.ts';
import { accepted, type Result } from '../../result.ts';
import type { CommandContext } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { positionOf, wayOf } from '../way.ts';
import { startOf } from './begin.ts';
import { feedByFormula } from '../feed-by-formula.ts';
import { isPlanned } from './sources.ts';

/** What brings a source to its last step, and when the last of that was. */
export interface Brought {
  readonly events: readonly FloorEvent[];
  readonly atMs: number;
}

/**
 * Somebody draws from a source, so it must be as far as its last step, where it is kept: whatever nobody tapped before is
 * closed as inferred, and a pot that was only planned has been fed as its formula says.
 */
export function broughtToLast(state: FloorState, source: Workpiece, atMs: number, isEmptied: boolean): Result<Brought, Refusal> {
  const way = wayOf(state, source);
  const isUnfed = source.stock !== null && isPlanned(source);
  const sinceMs = isUnfed ? Math.min(source.plannedStartMs, atMs) : Math.max(atMs, lastEdgeMs(source));
  const events: FloorEvent[] = [];
  // A pot drawn from was fed when it was meant to be, or it would not be ripe.
  if (isUnfed) events.push({ type: 'fermentFed', workpieceId: source.id, ...feedByFormula(state, source), discardedG: 0, atMs: sinceMs });
  const index = isUnfed ? 0 : positionOf(way, source);
  for (const step of way.slice(index, -1))
    events.push({ type: 'stepDone', workpieceId: source.id, stepId: step.id, atMs: sinceMs, inferred: true });
  const last = way.at(-1);
  if (last !== undefined && index < way.length - 1 && beginsByItself(last) && !isEmptied) {
    const started = startOf(state, source, last, sinceMs, contextOf(source, sinceMs));
    if (!started.ok) return started;
    events.push(...started.value);
  }
  return accepted({ events, atMs: Math.max(atMs, sinceMs) });
}

/** Nobody stood at the source: its steps have no station. */
function contextOf(source: Workpiece, atMs: number): CommandContext {
  return { commandId: source.id, deviceId: source.id, stationId: null, nowMs: atMs, tapMs: atMs, tapUncertain: false };
}

function lastEdgeMs(source: Workpiece): number {
  return Math.max(0, ...Object.values(source.steps).map((life) => Math.max(life.startedMs ?? 0, life.endedMs ?? 0)));
}
