import { targetMin, type Step } from '../../shared/documents/method.ts';
import type { EventOf } from '../../shared/floor/events.ts';
import { planPlacesOf } from '../../shared/floor/planned-step.ts';
import { versionKey, type FloorState, type Workpiece } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';

const MINUTE_MS = 60_000;
/** A batch's own steps, before it is divided; the loads of a cut that the plan does not tell apart. */
const NONE = -1;

/** When a step was to begin and end, as it was said before anything of the dough had begun. Cuts and loads count from 0; -1: none. */
export interface StepPromise {
  readonly cut: number;
  readonly load: number;
  readonly step: string;
  readonly startMs: number;
  readonly endMs: number;
}

/** What a workpiece is promised as it is planned: each step after the other by its target, from its planned start. */
export function nominalPromises(state: FloorState, workpiece: Workpiece): readonly StepPromise[] {
  const own = chained(wayOf(state, workpiece), workpiece.plannedStartMs, workpiece.pieces, NONE);
  const endMs = own.at(-1)?.endMs ?? workpiece.plannedStartMs;
  const cuts = workpiece.productId === null ? workpiece.cuts : [];
  const below = cuts.flatMap((cut, index) =>
    chained(state.products[versionKey(cut.productId, cut.productVersion)]?.way ?? [], endMs, cut.pieces, index),
  );
  return [...own, ...below];
}

/** What a whole plan promises of one workpiece and of what it is to be divided into. */
export function plannedPromises(starts: EventOf<'planAdopted'>['starts'], workpieceId: string): readonly StepPromise[] {
  return starts
    .filter((start) => start.workpieceId === workpieceId)
    .map(({ cut = NONE, load = NONE, stepId, plannedStartMs, plannedEndMs = plannedStartMs }) => ({
      cut,
      load,
      step: stepId,
      startMs: plannedStartMs,
      endMs: plannedEndMs,
    }));
}

/** Under which workpiece, cut and load a step of a workpiece may have been promised, the nearest first. */
export function promisePlaces(state: FloorState, workpiece: Workpiece): readonly { workpieceId: string; cut: number; load: number }[] {
  const places = planPlacesOf(state, workpiece).map(({ workpieceId, cut = NONE, load = NONE }) => ({ workpieceId, cut, load }));
  // What was promised of a whole cut holds for each of its loads.
  const whole = places.filter(({ load }) => load !== NONE).map((place) => ({ ...place, load: NONE }));
  return [...places, ...whole];
}

function chained(steps: readonly Step[], fromMs: number, pieces: number | null, cut: number): StepPromise[] {
  let atMs = fromMs;
  return steps.map((step) => {
    const startMs = atMs;
    atMs += targetMin(step, pieces) * MINUTE_MS;
    return { cut, load: NONE, step: step.id, startMs: Math.round(startMs), endMs: Math.round(atMs) };
  });
}
