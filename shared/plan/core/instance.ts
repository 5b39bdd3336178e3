/** A scheduling problem: activities with durations and demands on renewable resources, bound by start-to-start lags. */
export interface Instance {
  /** How long each activity takes. Activity 0 begins everything and the last ends it; both take no time. */
  readonly durations: Int32Array;
  /** `demands[resource][activity]`. */
  readonly demands: readonly Int32Array[];
  /** What each resource has at once. */
  readonly capacities: Int32Array;
  readonly arcs: readonly Arc[];
  /** What a resource has from an instant on, by resource; null where it always has its capacity. */
  readonly calendars?: readonly (readonly CapacityStep[] | null)[];
}

/** Holds start(to) - start(from) at `lag` at least; a negative lag bounds how long after `to` the activity `from` may start. */
export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
}

/** From this instant until the next step's, this much of the resource is there. Steps are ordered; before the first, nothing changes. */
export interface CapacityStep {
  readonly from: number;
  readonly capacity: number;
}

/** How much work a search may do. */
export interface Budget {
  /** The most generation attempts; failed ones and nodes of a tree are counted. */
  readonly schedules: number;
  readonly seed: number;
}

/** What a search found. */
export interface Outcome {
  /** The best schedule's starts, by activity, or null where none was found. */
  readonly starts: Int32Array | null;
  /** When the last activity of the best schedule starts. */
  readonly makespan: number | null;
  /** How many generation attempts were made. */
  readonly schedules: number;
  readonly isProvedInfeasible: boolean;
  readonly isProvedOptimal: boolean;
}
