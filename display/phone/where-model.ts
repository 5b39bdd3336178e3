import type { Step, Verb } from '../../shared/documents/method.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { positionOf, wayOf } from '../../shared/floor/way.ts';

/** A step that a dough may really be at. */
export interface Whereabouts {
  readonly stepId: string;
  readonly verb: Verb;
  /** The second fold of three is 2; null where the way has only one of the verb. */
  readonly nth: number | null;
}

/** Where a dough may really be: further than the floor thinks, nearest first; or not so far, nearest first. */
export interface WhereChoice {
  readonly ahead: readonly Whereabouts[];
  readonly behind: readonly Whereabouts[];
}

export function whereChoice(state: FloorState, workpiece: Workpiece): WhereChoice {
  const way = wayOf(state, workpiece);
  const at = positionOf(way, workpiece);
  const current = way[at];
  const isBegun = current !== undefined && workpiece.steps[current.id] !== undefined;
  return {
    ahead: way.slice(isBegun ? at + 1 : at).map((step) => placeOf(way, step)),
    behind: way
      .slice(0, at)
      .map((step) => placeOf(way, step))
      .reverse(),
  };
}

/** A step with its number among those of its verb. */
export function placeOf(way: readonly Step[], step: Step): Whereabouts {
  const same = way.filter((other) => other.verb === step.verb);
  return { stepId: step.id, verb: step.verb, nth: same.length < 2 ? null : same.findIndex((other) => other.id === step.id) + 1 };
}
