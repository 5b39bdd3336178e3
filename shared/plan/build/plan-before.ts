import type { PlannedStep } from '../../floor/events.ts';
import { planPlacesOf, type PlanPlace } from '../../floor/planned-step.ts';
import type { FloorState } from '../../floor/state.ts';
import { threadKey, type Thread } from './thread.ts';

/** Where the plan in force, and the pins that people have set, want the steps of threads. */
export class PlanBefore {
  readonly isThere: boolean;
  private readonly state: FloorState;
  private readonly steps = new Map<string, PlannedStep>();
  private readonly pins = new Map<string, number>();
  private readonly places = new Map<Thread, readonly string[]>();

  /** `tried` are pins by the keys of activities. */
  constructor(state: FloorState, tried: readonly { readonly key: string; readonly startMs: number }[]) {
    this.state = state;
    this.isThere = state.plan !== null;
    for (const [workpieceId, steps] of Object.entries(state.plan?.steps ?? {}))
      for (const step of steps) this.steps.set(`${placeKey(workpieceId, step.cut, step.load)}|${step.stepId}`, step);
    for (const pin of Object.values(state.pins))
      if (pin.kind === 'startsAt') this.pins.set(`${placeKey(pin.workpieceId, pin.cut, pin.load)}|${pin.stepId}`, pin.startMs);
    for (const { key, startMs } of tried) this.pins.set(key, startMs);
  }

  /** What the plan says of a step; null where it says nothing. */
  step(thread: Thread, stepId: string): PlannedStep | null {
    if (!this.isThere || thread.place.workpieceId === null) return null;
    for (const place of this.placesOf(thread)) {
      const found = this.steps.get(`${place}|${stepId}`);
      if (found !== undefined) return found;
    }
    return null;
  }

  /** When somebody wants a step to begin, whatever else; null where nobody does. */
  pinnedMs(thread: Thread, stepId: string): number | null {
    if (this.pins.size === 0) return null;
    for (const place of this.placesOf(thread)) {
      const found = this.pins.get(`${place}|${stepId}`);
      if (found !== undefined) return found;
    }
    return null;
  }

  private placesOf(thread: Thread): readonly string[] {
    const known = this.places.get(thread);
    if (known !== undefined) return known;
    const made = [threadKey(thread.place), ...this.namesAbove(thread)];
    this.places.set(thread, made);
    return made;
  }

  /** The names under which the plan may know it: what was divided since stands in it as a cut or load of what it came of. */
  private namesAbove({ place }: Thread): readonly string[] {
    const workpiece = place.workpieceId === null ? undefined : this.state.workpieces[place.workpieceId];
    if (workpiece?.parentId === null || workpiece === undefined) return [];
    return planPlacesOf(this.state, workpiece)
      .slice(1)
      .map((above: PlanPlace) => placeKey(above.workpieceId, place.cut ?? above.cut, place.load ?? above.load));
  }
}

function placeKey(id: string, cut: number | undefined, load: number | undefined): string {
  return threadKey({ batchKey: id, workpieceId: id, cut, load });
}
