/**
 * The day as the solver sees it: a resource-constrained problem with minimum and maximum lags, choices of resource, holds
 * that last from one activity to another, calendars, set-ups, and goals. All times are whole seconds after an origin that
 * the builder keeps. Nothing here knows of dough.
 */
export interface DayProblem {
  readonly activities: readonly Activity[];
  readonly lags: readonly Lag[];
  readonly resources: readonly PlanResource[];
  readonly choices: readonly Choice[];
  readonly holds: readonly Hold[];
  readonly goals: readonly Goal[];
  /** How many batches the activities belong to. */
  readonly batchCount: number;
}

export type Edge = 'start' | 'end';

export interface Activity {
  /** Unique and stable from one build to the next: what the builder calls it. */
  readonly key: string;
  /** From 0; the order below is sought batch by batch and within them. Several cuts and loads of a batch share it. */
  readonly batch: number;
  readonly durationS: number;
  /** Not before; for what is planned while time goes by, the present. */
  readonly releaseS: number;
  /** Begun, or over but still bound to others: it stands where it stands. */
  readonly fixedStartS: number | null;
  /** Somebody wants it to begin exactly then. Kept, or counted as broken. */
  readonly pinnedStartS: number | null;
  /** Where the plan had it before; what moves from there has its price. */
  readonly previousStartS: number | null;
  /** Begins so soon that people were told: it stays at previousStartS unless that is impossible. */
  readonly isToldAlready: boolean;
}

/** The time from an edge of one activity to an edge of another: at least `minS`, at most `mostS`, wanted at `targetS`. */
export interface Lag {
  readonly from: number;
  readonly fromEdge: Edge;
  readonly to: number;
  readonly toEdge: Edge;
  readonly minS: number;
  /** Null: however long. */
  readonly mostS: number | null;
  readonly targetS: number | null;
  /** What a minute away from the target costs, before and after it. */
  readonly awayPrice: number;
  /** What a minute past `mostS` costs where it cannot be kept any more (the dough is being lost, and still must be planned). */
  readonly spoilPrice: number;
}

export interface PlanResource {
  readonly kind: string;
  readonly id: string;
  readonly capacity: number;
  /** Capacity from an instant on, in order; before the first, `capacity`. Null: always `capacity`. */
  readonly calendar: readonly { readonly fromS: number; readonly capacity: number }[] | null;
  /** Set-up seconds from a state to another, [from][to]; null where it needs none. States are counted from 0. */
  readonly setupS: readonly (readonly number[])[] | null;
  /** The state in which it stands at the origin; null: any. */
  readonly stateAtFirst: number | null;
  /** Whether only holds of one state may share it at a time (an oven's deck). Holds without a state share with all. */
  readonly sharesOneState: boolean;
  /** What a minute between two holds in the same hot state costs; 0 where idling is free. */
  readonly idlePrice: number;
}

/** One of several that will do; all holds that name the choice go to the same option. */
export interface Choice {
  readonly options: readonly { readonly resource: number; readonly price: number }[];
  readonly fixedOption: number | null;
  readonly previousOption: number | null;
}

/** So much of a resource, from an edge of one activity to an edge of another, and for `afterS` more (turn-round). */
export interface Hold {
  readonly from: number;
  readonly fromEdge: Edge;
  readonly to: number;
  readonly toEdge: Edge;
  readonly afterS: number;
  /** A resource and how much; or a choice and how much by option. */
  readonly on: { readonly resource: number; readonly amount: number } | { readonly choice: number; readonly amounts: readonly number[] };
  /** By option (one entry where it is on a resource); null: no state. */
  readonly states: readonly number[] | null;
}

/** What is wanted of an activity's edge: by an instant; made not longer than `freshS` before it. */
export interface Goal {
  readonly key: string;
  readonly activity: number;
  readonly edge: Edge;
  readonly dueS: number;
  /** What a minute late costs. */
  readonly latePrice: number;
  readonly fresh: { readonly activity: number; readonly edge: Edge; readonly mostS: number; readonly price: number } | null;
  /** What a minute too early costs; small. */
  readonly earlyPrice: number;
  /** To be served before all others. */
  readonly isFirst: boolean;
}

/** What a plan costs, by what it is for; `total` is what the search makes small. */
export interface DayCost {
  readonly spoil: number;
  readonly pins: number;
  readonly late: number;
  readonly ripeness: number;
  readonly freshness: number;
  readonly calm: number;
  readonly moved: number;
  readonly total: number;
}

export interface DaySolution {
  readonly startsS: Int32Array;
  /** By choice. */
  readonly options: Int32Array;
  readonly cost: DayCost;
  /** Lags whose `mostS` is not kept, and by how much. */
  readonly spoiled: readonly { readonly lag: number; readonly byS: number }[];
  /** Goals that are late, and by how much. */
  readonly late: readonly { readonly goal: number; readonly byS: number }[];
  /** Activities that are not where they are pinned. */
  readonly pinsBroken: readonly number[];
  readonly schedules: number;
}

export interface DayBudget {
  /** Most schedules generated, failed ones counted. */
  readonly schedules: number;
  readonly seed: number;
}

/**
 * Hands are level where each stretch of this length has the same of their work: for every resource of kind `station`, the squares of the
 * share of its capacity that is held in each stretch, counted from the origin, are added up, each full one at `crowdedStretch`. The sum of
 * squares is least where the same work is spread evenly: half as busy costs a quarter.
 */
export const LEVEL_STRETCH_S = 1800;

/**
 * Price of a minute by which an activity is spoiled, a pin broken; and by which a told or near activity is moved. Of a stretch in which all
 * hands of a station are busy.
 */
export const PRICES = {
  spoilMin: 1000,
  pinMin: 500,
  lateMin: 100,
  ripenessMin: 1,
  freshMin: 3,
  earlyMin: 0.02,
  idleMin: 0.05,
  crowdedStretch: 1,
  movedMin: 0.5,
  toldMin: 50,
} as const;
