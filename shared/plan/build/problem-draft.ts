import {
  PRICES,
  type Activity,
  type Choice,
  type DayProblem,
  type Edge,
  type Goal,
  type Hold,
  type Lag,
  type PlanResource,
} from '../day/problem.ts';

/** An edge of an activity, and how long after it. */
export interface Point {
  readonly activity: number;
  readonly edge: Edge;
  readonly offsetS: number;
}

/** How long from a point to another: all in seconds. */
export interface Window {
  readonly minS: number;
  readonly mostS: number | null;
  readonly targetS: number | null;
  readonly awayPrice: number;
}

/** A problem while it is put together. Everything is told by its index. */
export class ProblemDraft {
  readonly activities: Activity[] = [];
  readonly lags: Lag[] = [];
  readonly resources: PlanResource[] = [];
  readonly choices: Choice[] = [];
  readonly holds: Hold[] = [];
  readonly goals: Goal[] = [];
  private readonly keys = new Set<string>();

  /** Adds an activity; a key that is there already gets a number behind it. Returns its index. */
  activity(activity: Activity): number {
    let { key } = activity;
    for (let again = 2; this.keys.has(key); again += 1) key = `${activity.key}~${again}`;
    this.keys.add(key);
    return this.activities.push(key === activity.key ? activity : { ...activity, key }) - 1;
  }

  /** Adds a lag between points. Two activities that stand where they stand are bound by nothing: then null. */
  lag(from: Point, to: Point, { minS, mostS, targetS, awayPrice }: Window): number | null {
    if (this.isFixed(from.activity) && this.isFixed(to.activity)) return null;
    const shiftS = from.offsetS - to.offsetS;
    return (
      this.lags.push({
        from: from.activity,
        fromEdge: from.edge,
        to: to.activity,
        toEdge: to.edge,
        minS: minS + shiftS,
        mostS: mostS === null ? null : mostS + shiftS,
        targetS: targetS === null ? null : targetS + shiftS,
        awayPrice,
        spoilPrice: PRICES.spoilMin,
      }) - 1
    );
  }

  /** Adds a hold, but for one of no amount in any option; then null. */
  hold(hold: Hold): number | null {
    const isNothing = 'choice' in hold.on ? hold.on.amounts.every((amount) => amount === 0) : hold.on.amount === 0;
    return isNothing ? null : this.holds.push(hold) - 1;
  }

  choice(choice: Choice): number {
    return this.choices.push(choice) - 1;
  }

  /** Changes an activity that is there. */
  amend(index: number, change: Partial<Omit<Activity, 'key'>>): void {
    const activity = this.activities[index];
    if (activity !== undefined) this.activities[index] = { ...activity, ...change };
  }

  isFixed(index: number): boolean {
    return this.activities[index]?.fixedStartS !== null;
  }

  done(batchCount: number): DayProblem {
    const { activities, lags, resources, choices, holds, goals } = this;
    return { activities, lags, resources, choices, holds, goals, batchCount };
  }
}
