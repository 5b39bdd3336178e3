import type { Verb } from '../documents/method.ts';
import type { FloorState, Workpiece } from './state.ts';
import { wayOf } from './way.ts';

const MINUTE_MS = 60_000;
const COOLS: ReadonlySet<Verb> = new Set<Verb>(['cool', 'chill']);
/** What was read at or below this is cool enough to go into a dough or onto it, in °C: hand-warm. Our choice, and no rule of holding. */
const HAND_WARM_C = 30;

/**
 * When a prep that has been begun will have cooled as its method asks; null where it has, or need not, or where nobody has tapped anything
 * of it. By the least minutes of its cooling, or by what was read of it since.
 */
export function coolsAtMs(state: FloorState, prep: Workpiece, atMs: number): number | null {
  if (prep.kind !== 'prep' || Object.keys(prep.steps).length === 0) return null;
  const way = wayOf(state, prep);
  const cooling = way.findLast(({ verb }) => COOLS.has(verb));
  if (cooling === undefined) return null;
  const life = prep.steps[cooling.id];
  if (life !== undefined && life.status !== 'started') return null;
  const hotFromMs = Math.max(0, ...Object.values(prep.steps).map(({ startedMs }) => startedMs ?? 0));
  const last = prep.readings.findLast(({ where }) => where === 'filling' || where === 'core');
  if (last !== undefined && last.atMs >= hotFromMs && last.celsius <= HAND_WARM_C) return null;
  const leastMin = cooling.minutes.earliest ?? cooling.minutes.target;
  const cooledMs = Math.round((life?.startedMs ?? atMs) + leastMin * MINUTE_MS);
  return cooledMs <= atMs ? null : cooledMs;
}
