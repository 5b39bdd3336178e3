import { doughCourse, type DoughCourse, type Stay } from '../trade/dough-course.ts';
import { sphereTauMin, tauEstimate } from '../trade/time-constant.ts';
import { NO_VESSEL } from './evolve-air.ts';
import type { Kitchen } from '../documents/kitchen.ts';
import { formulaOf } from './contents.ts';
import { airAt, airOf, isAirSaid } from './place-air.ts';
import type { FloorState, TemperatureReading, Workpiece } from './state.ts';

type Vessel = Kitchen['vessels'][number];

const MINUTE_MS = 60_000;
/** A reading taken so long before the mixing is over, on the way out of the bowl, is one of the dough. Our choice. */
const READ_IN_BOWL_MS = 15 * MINUTE_MS;
/** How warm a dough has been, is and will be, as far as anybody knows. */
export interface Warmth {
  /** Minutes of the course count from here: when it was made, or fed. */
  readonly originMs: number;
  readonly course: DoughCourse;
  /** What was read of it, in the order of time. */
  readonly readings: readonly TemperatureReading[];
}

/**
 * The course of a dough's temperature: from its formula's dough temperature, or what was read, drifting to the air of the places where it has
 * stood and stands, as long as it stays there. Null where it is not made yet, or nothing says how warm it was.
 */
export function warmthOf(state: FloorState, workpiece: Workpiece): Warmth | null {
  const originMs = madeMs(state, workpiece);
  if (originMs === null) return null;
  const readings = workpiece.readings
    .filter(({ where, atMs }) => where === 'dough' && atMs > originMs - READ_IN_BOWL_MS)
    .sort((a, b) => a.atMs - b.atMs);
  const startC = formulaOf(state, workpiece)?.doughC ?? readings[0]?.celsius ?? airAt(state, null, originMs);
  const stays = staysOf(state, workpiece, originMs);
  if (startC === null || stays.length === 0) return null;
  const minuteOf = (atMs: number): number => (atMs - originMs) / MINUTE_MS;
  return {
    originMs,
    course: doughCourse({ startC, stays, readings: readings.map(({ atMs, celsius }) => ({ atMin: minuteOf(atMs), doughC: celsius })) }),
    readings,
  };
}

/** When it was mixed or fed last; what became of a batch is as old as that. */
function madeMs(state: FloorState, workpiece: Workpiece): number | null {
  if (workpiece.stock !== null) return workpiece.stock.fedMs;
  const method = formulaOf(state, workpiece)?.method ?? [];
  const mixing = method.findLast((step) => step.verb === 'firstSpeed' || step.verb === 'secondSpeed');
  for (
    let one: Workpiece | undefined = workpiece;
    one !== undefined;
    one = one.parentId === null ? undefined : state.workpieces[one.parentId]
  ) {
    const life = mixing === undefined ? undefined : one.steps[mixing.id];
    if (life !== undefined) return life.endedMs;
  }
  return workpiece.stays[0]?.sinceMs ?? null;
}

/** Where it has stood since it was made, each stay in as many pieces as its air had temperatures. */
function staysOf(state: FloorState, workpiece: Workpiece, originMs: number): readonly Stay[] {
  const { stays } = workpiece;
  const tauMin = tauOf(state, workpiece);
  const first = stays.findLastIndex(({ sinceMs }) => sinceMs <= originMs);
  const since = [{ placeId: stays[first]?.placeId ?? null, sinceMs: originMs }, ...stays.slice(first + 1)];
  return since.flatMap(({ placeId, sinceMs }, index) => {
    const toMs = since[index + 1]?.sinceMs ?? Number.POSITIVE_INFINITY;
    return airOf(state, placeId, sinceMs, toMs).map(({ sinceMs: fromMs, ambientC }): Stay => ({
      fromMin: (fromMs - originMs) / MINUTE_MS,
      ambientC,
      tauMin,
      selfHeatKPerH: selfHeatKPerH(state, workpiece, ambientC),
    }));
  });
}

/** Below this weight a dough gives its own heat off as it makes it, in grams; below this air it makes hardly any, in °C. Our choices. */
const SELF_HEATS_FROM_G = 1000;
const SELF_HEATS_FROM_C = 15;

/**
 * By how much it warms itself in an hour, in kelvin, as its formula says: a bulk of kilograms at room temperature does, by 1 to 2 K
 * (baeckerlatein "Teigtemperatur", as the design's `trade.md` cites it); pieces and what stands in the cold do not.
 */
export function selfHeatKPerH(state: FloorState, workpiece: Workpiece, ambientC: number): number {
  if (warmedG(workpiece) < SELF_HEATS_FROM_G || ambientC < SELF_HEATS_FROM_C) return 0;
  return formulaOf(state, workpiece)?.selfHeatKPerH ?? 0;
}

/**
 * How fast it takes on the temperature of the air, in minutes: as doughs in such vessels have shown, beside what is known of a sphere of its
 * weight, or of one piece's once it is shaped. A dough of another weight has shown it in as many more or fewer minutes as a sphere would.
 */
export function tauOf(state: FloorState, workpiece: Workpiece): number {
  const usualMin = sphereTauMin(warmedG(workpiece));
  const pairs = (state.drifts[vesselKeyOf(state, workpiece)] ?? []).map(
    ({ grams, minutes, beforeC, afterC, ambientC, selfHeatKPerH: ownKPerH = 0 }) => ({
      minutes: (minutes * usualMin) / sphereTauMin(grams),
      beforeC,
      afterC,
      ambientC,
      selfHeatKPerH: ownKPerH,
    }),
  );
  return tauEstimate(pairs, usualMin)?.tauMin ?? usualMin;
}

/** What it stands in, as time constants are learned by. */
export function vesselKeyOf(state: FloorState, { vessels }: Workpiece): Vessel['kind'] | typeof NO_VESSEL {
  const held = vessels[0];
  return state.kitchen?.document.vessels.find((vessel) => vessel.id === held?.vesselId)?.kind ?? NO_VESSEL;
}

/** The weight that warms and cools as one, in grams: all of a dough in bulk, a piece once it was divided. */
export function warmedG({ kind, grams, pieces }: Workpiece): number {
  const isInPieces = (kind === 'cut' || kind === 'load') && pieces !== null && pieces > 0;
  return Math.max(1, isInPieces ? grams / pieces : grams);
}

/** Whether anybody knows more of a dough's warmth since an instant than its method says: it was read, moved elsewhere, or its air was. */
export function isWarmthSaid(state: FloorState, workpiece: Workpiece, usualPlaceId: string | null, sinceMs: number): boolean {
  const warmth = warmthOf(state, workpiece);
  if (warmth === null) return false;
  if (warmth.readings.length > 0) return true;
  const standsElsewhere = workpiece.stays.some(
    ({ placeId, sinceMs: fromMs }, index) =>
      placeId !== null &&
      placeId !== usualPlaceId &&
      (workpiece.stays[index + 1]?.sinceMs ?? Number.POSITIVE_INFINITY) > sinceMs &&
      fromMs >= sinceMs,
  );
  return standsElsewhere || isAirSaid(state, workpiece.placeId, sinceMs);
}
