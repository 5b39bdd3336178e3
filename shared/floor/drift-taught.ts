import { tauOfPair } from '../trade/time-constant.ts';
import type { FloorEvent } from './events.ts';
import { NO_VESSEL } from './evolve-air.ts';
import { airOf } from './place-air.ts';
import type { FloorState, Workpiece } from './state.ts';
import { selfHeatKPerH, vesselKeyOf, warmedG } from './warmth.ts';

const MINUTE_MS = 60_000;
/** Readings nearer to one another than this say more of the probe than of the dough. */
const LEAST_APART_MIN = 10;

/**
 * What a reading teaches of how fast such a dough takes on the temperature of the air, together with the one before it: nothing where the
 * dough was moved between them, its air changed, or the two say nothing (`tauOfPair`).
 */
export function taughtByReading(state: FloorState, workpiece: Workpiece, celsius: number, atMs: number): readonly FloorEvent[] {
  const before = workpiece.readings.findLast((reading) => reading.where === 'dough' && reading.atMs < atMs);
  const stay = workpiece.stays.at(-1);
  if (before === undefined || stay === undefined || stay.placeId === null || stay.sinceMs > before.atMs) return [];
  const [air, ...others] = airOf(state, stay.placeId, before.atMs, atMs);
  const minutes = (atMs - before.atMs) / MINUTE_MS;
  if (air === undefined || others.length > 0 || minutes < LEAST_APART_MIN) return [];
  const pair = { minutes, beforeC: before.celsius, afterC: celsius, ambientC: air.ambientC };
  const ownKPerH = selfHeatKPerH(state, workpiece, air.ambientC);
  if (tauOfPair({ ...pair, selfHeatKPerH: ownKPerH }) === null) return [];
  const key = vesselKeyOf(state, workpiece);
  return [
    {
      type: 'driftLearned',
      workpieceId: workpiece.id,
      vesselKind: key === NO_VESSEL ? null : key,
      grams: warmedG(workpiece),
      ...pair,
      ...(ownKPerH === 0 ? {} : { selfHeatKPerH: ownKPerH }),
      atMs,
    },
  ];
}
