import type { BuiltDay } from '../build/built-day.ts';
import type { DaySolution } from '../day/problem.ts';
import { resolvedHolds } from './resolved-holds.ts';

/**
 * From when to when the last of the hands of a station is at work, one more than the kitchen has: the first and the last
 * instant at which all of them are. Null where it is not needed at all.
 */
export function handsNeeded(
  { problem, originMs }: BuiltDay,
  { startsS, options }: Pick<DaySolution, 'startsS' | 'options'>,
  stationId: string,
): { readonly fromMs: number; readonly toMs: number } | null {
  const station = problem.resources.findIndex(({ kind, id }) => kind === 'station' && id === stationId);
  const capacity = problem.resources[station]?.capacity ?? 0;
  const own = resolvedHolds(problem, startsS, options).filter(({ resource, toS, fromS }) => resource === station && toS > fromS);
  const full = own.filter(({ fromS }) => atWork(own, fromS) >= capacity).map(({ fromS }) => fromS);
  if (full.length === 0) return null;
  const toS = Math.max(...own.filter((hold) => full.some((fromS) => hold.fromS <= fromS && fromS < hold.toS)).map((hold) => hold.toS));
  return { fromMs: originMs + Math.min(...full) * 1000, toMs: originMs + toS * 1000 };
}

function atWork(own: readonly { readonly fromS: number; readonly toS: number; readonly amount: number }[], atS: number): number {
  return own.reduce((sum, { fromS, toS, amount }) => (fromS <= atS && atS < toS ? sum + amount : sum), 0);
}
