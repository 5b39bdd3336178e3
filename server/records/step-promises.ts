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

/**
 * What a workpiece is promised as it is planned, and what it is to be divided into: each step when a plan has it, the others one after the
 * other by their targets, from its planned start. `starts` are a whole plan's, of any workpieces.
 */
export function promisesOf(state: FloorState, workpiece: Workpiece, starts: EventOf<'planAdopted'>['starts'] = []): readonly StepPromise[] {
  const planned = starts
    .filter((start) => start.workpieceId === workpiece.id)
    .map(({ cut = NONE, load = NONE, stepId, plannedStartMs, plannedEndMs }) => ({
      cut,
      load,
      step: stepId,
      startMs: plannedStartMs,
      plannedEndMs,
    }));
  const chain = (steps: readonly Step[], fromMs: number, pieces: number | null, cut: number): StepPromise[] => {
    let atMs = fromMs;
    return steps.map((step) => {
      // Of a cut that is planned in loads the first of them leads.
      const plan = planned.find((start) => start.cut === cut && start.step === step.id);
      const startMs = plan?.startMs ?? atMs;
      const lastsMs = plan?.plannedEndMs === undefined ? targetMin(step, pieces) * MINUTE_MS : plan.plannedEndMs - startMs;
      atMs = startMs + lastsMs;
      return { cut, load: NONE, step: step.id, startMs: Math.round(startMs), endMs: Math.round(atMs) };
    });
  };
  const own = chain(wayOf(state, workpiece), workpiece.plannedStartMs, workpiece.pieces, NONE);
  const endMs = own.at(-1)?.endMs ?? workpiece.plannedStartMs;
  const cuts = workpiece.productId === null ? workpiece.cuts : [];
  const below = cuts.flatMap((cut, index) =>
    chain(state.products[versionKey(cut.productId, cut.productVersion)]?.way ?? [], endMs, cut.pieces, index),
  );
  const loads = planned.filter(({ load }) => load !== NONE);
  return [...own, ...below, ...loads.map(({ plannedEndMs, ...load }) => ({ ...load, endMs: plannedEndMs ?? load.startMs }))];
}

/** Under which workpiece, cut and load a step of a workpiece may have been promised, the nearest first. */
export function promisePlaces(state: FloorState, workpiece: Workpiece): readonly { workpieceId: string; cut: number; load: number }[] {
  const places = planPlacesOf(state, workpiece).map(({ workpieceId, cut = NONE, load = NONE }) => ({ workpieceId, cut, load }));
  // What was promised of a whole cut holds for each of its loads.
  const whole = places.filter(({ load }) => load !== NONE).map((place) => ({ ...place, load: NONE }));
  return [...places, ...whole];
}
