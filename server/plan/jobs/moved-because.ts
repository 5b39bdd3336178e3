import { resourceSchema, type MovedStep } from '../../../shared/floor/events.ts';
import type { BuiltDay } from '../../../shared/plan/build/built-day.ts';
import { groupedBy } from '../../../shared/plan/build/grouped.ts';
import { activityAt } from '../../../shared/plan/day/edges.ts';
import type { DayProblem, DaySolution, Lag, PlanResource } from '../../../shared/plan/day/problem.ts';
import { edgeS, resolvedHolds, type ResolvedHold } from '../../../shared/plan/why/resolved-holds.ts';
import { startS } from './place-of-day.ts';

export type Because = NonNullable<MovedStep['because']>;

/** What brought the re-plan about, for moves that nothing in the day holds where they are. */
export type Hint = 'order' | 'pin' | 'search';

/** Says of one solution what holds its activities where they are. */
export class MoveReasons {
  readonly #built: BuiltDay;
  readonly #startsS: Int32Array;
  readonly #hint: Hint;
  readonly #lagsInto: ReadonlyMap<number, readonly Lag[]>;
  readonly #lagsOutOf: ReadonlyMap<number, readonly Lag[]>;
  readonly #holdsFrom: ReadonlyMap<number, readonly ResolvedHold[]>;
  readonly #holdsOn: ReadonlyMap<number, readonly ResolvedHold[]>;

  constructor(built: BuiltDay, { startsS, options }: Pick<DaySolution, 'startsS' | 'options'>, hint: Hint) {
    this.#built = built;
    this.#startsS = startsS;
    this.#hint = hint;
    const holds = resolvedHolds(built.problem, startsS, options);
    this.#lagsInto = groupedBy(built.problem.lags, ({ to }) => to);
    this.#lagsOutOf = groupedBy(built.problem.lags, ({ from }) => from);
    this.#holdsFrom = groupedBy(holds, ({ hold }) => hold.from);
    this.#holdsOn = groupedBy(holds, ({ resource }) => resource);
  }

  /**
   * What holds a moved activity where it is now: a pin, the dough's own step before it, a resource that another step gives
   * free just then or that begins to be there, or the step after it, which is held by one of these. Where nothing does, it
   * is what brought the re-plan about.
   */
  of(activity: number): Because {
    return this.#reasonOf(activity, new Set()) ?? { what: this.#hint };
  }

  #reasonOf(activity: number, seen: Set<number>): Because | null {
    seen.add(activity);
    const { pinnedStartS, previousStartS, releaseS } = activityAt(this.#problem, activity);
    const nowS = startS(this.#startsS, activity);
    if (pinnedStartS === nowS) return { what: 'pin' };
    const isLater = previousStartS !== null && nowS > previousStartS;
    const before = this.#stepBefore(activity, seen);
    const hasMovedBefore = before !== null && this.#hasMoved(before);
    const byResource = isLater && !hasMovedBefore ? this.#resourceBefore(activity) : null;
    if (byResource !== null) return byResource;
    if (before !== null && (hasMovedBefore || isLater)) return { what: 'dough', ...this.#factsOf(before) };
    // Its time came and nobody began it.
    if (isLater && nowS === releaseS) return { what: 'dough', ...this.#factsOf(activity) };
    const after = this.#stepAfter(activity);
    if (after === null || seen.has(after) || !this.#hasMoved(after)) return null;
    // It would only wait for the one after it: whatever holds that one holds both.
    return this.#reasonOf(after, seen) ?? { what: 'dough', ...this.#factsOf(after) };
  }

  get #problem(): DayProblem {
    return this.#built.problem;
  }

  /** The activity whose lag ends just where this one begins, none of `seen`; one that moved, if there is a choice. */
  #stepBefore(activity: number, seen: ReadonlySet<number>): number | null {
    // What is itself only held by this one holds nothing.
    const into = (this.#lagsInto.get(activity) ?? []).filter(({ from }) => !seen.has(from));
    const binding = into.filter((lag) => this.#gapS(lag) === Math.max(lag.minS, lag.targetS ?? lag.minS));
    return this.#chosen(binding.map(({ from }) => from));
  }

  /** The activity that this one must not be, or is better not, further ahead of. */
  #stepAfter(activity: number): number | null {
    const binding = (this.#lagsOutOf.get(activity) ?? []).filter((lag) => {
      const gapS = this.#gapS(lag);
      return gapS === lag.minS || gapS === lag.targetS || gapS === lag.mostS;
    });
    return this.#chosen(binding.map(({ to }) => to));
  }

  #chosen(activities: readonly number[]): number | null {
    return activities.find((other) => this.#hasMoved(other)) ?? activities[0] ?? null;
  }

  #gapS({ from, fromEdge, to, toEdge }: Lag): number {
    return edgeS(this.#problem, this.#startsS, to, toEdge) - edgeS(this.#problem, this.#startsS, from, fromEdge);
  }

  /** Not where the plan had it; what has begun counts as moved where it stands otherwise than planned. */
  #hasMoved(activity: number): boolean {
    const { previousStartS, fixedStartS } = activityAt(this.#problem, activity);
    return fixedStartS !== null || (previousStartS !== null && startS(this.#startsS, activity) !== previousStartS);
  }

  /** The resource that another activity's hold gives free just as this one's begins, set-up counted in; or that begins to be there. */
  #resourceBefore(activity: number): Because | null {
    for (const own of this.#holdsFrom.get(activity) ?? []) {
      const resource = this.#problem.resources[own.resource];
      if (resource === undefined) continue;
      const blocker = this.#holdsOn
        .get(own.resource)
        ?.find((other) => other !== own && other.hold.to !== activity && other.toS + this.#setupS(other, own) === own.fromS);
      if (blocker !== undefined) return { what: 'resource', ...named(resource), ...this.#factsOf(blocker.hold.to) };
      if (resource.calendar?.some(({ fromS }) => fromS === own.fromS) === true) return { what: 'resource', ...named(resource) };
    }
    return null;
  }

  #setupS(before: ResolvedHold, after: ResolvedHold): number {
    if (before.state === null || after.state === null) return 0;
    return this.#problem.resources[after.resource]?.setupS?.[before.state]?.[after.state] ?? 0;
  }

  #factsOf(activity: number): Pick<Because, 'workpieceId' | 'stepId'> {
    const step = this.#built.steps[activity];
    if (step === undefined || step.workpieceId === null) return {};
    return { workpieceId: step.workpieceId, stepId: step.stepId };
  }
}

/** A resource as the floor names it; nothing where it is one of the planner's own. */
function named({ kind, id }: PlanResource): Pick<Because, 'resource'> {
  const facts = resourceSchema.safeParse({ kind, id });
  return facts.success ? { resource: facts.data } : {};
}
