import type { DayProblem, Edge, Hold, PlanResource } from '../../shared/plan/day/problem.ts';

/**
 * What is wrong with a schedule of a day, from the definition of the problem alone (the docs of `problem.ts`): no line is
 * shared with what makes schedules. Each fault begins with its name and a colon. Everything is reckoned pair by pair and
 * instant by instant, slowly and plainly, so that it can be read against the definition.
 */

/** When everything begins and which option every choice takes: what a solver answers, without what it says of it. */
export interface Schedule {
  readonly startsS: ArrayLike<number>;
  readonly options: ArrayLike<number>;
}

/** A hold as it came to lie: its resource, how much of it, in which state, from when to when (the turn-round included). */
export interface LaidHold {
  readonly hold: number;
  readonly resource: number;
  readonly amount: number;
  readonly state: number | null;
  readonly fromS: number;
  readonly toS: number;
  /** What it begins with is begun, and where: nobody can take it away any more, only end it sooner or later. */
  readonly isBegun: boolean;
}

/**
 * Everything in which a schedule breaks what may never be broken: durations are part of every edge, so a wrong one shows
 * as a wrong lag or hold. Maximum lags and pins are no part of it: see `overstayed` and `offPin`. Empty for a valid schedule.
 */
export function faultsOf(problem: DayProblem, schedule: Schedule): string[] {
  const shape = shapeFaults(problem, schedule);
  if (shape.length > 0) return shape;
  const laid = layHolds(problem, schedule);
  return [
    ...startFaults(problem, schedule),
    ...leastLagFaults(problem, schedule),
    ...laid.flatMap((one) => (one.toS < one.fromS ? [`hold: ${nameOf(problem, one)} ends ${one.fromS - one.toS} s before it begins`] : [])),
    ...problem.resources.flatMap((resource, index) => {
      const on = laid.filter((one) => one.resource === index && one.toS > one.fromS);
      return [...capacityFaults(problem, resource, on), ...sharingFaults(problem, resource, on), ...setupFaults(problem, resource, on)];
    }),
  ];
}

/** Lags whose most is not kept, and by how many seconds, in the order of the problem. */
export function overstayed(problem: DayProblem, startsS: ArrayLike<number>): { lag: number; byS: number }[] {
  return problem.lags.flatMap(({ mostS }, lag) => {
    const byS = mostS === null ? 0 : lagS(problem, startsS, lag) - mostS;
    return byS > 0 ? [{ lag, byS }] : [];
  });
}

/** Activities that somebody pinned and that do not begin then. */
export function offPin(problem: DayProblem, startsS: ArrayLike<number>): number[] {
  return problem.activities.flatMap(({ pinnedStartS }, index) => (pinnedStartS === null || pinnedStartS === startsS[index] ? [] : [index]));
}

/** The instant of an edge of an activity. */
export function edgeS(problem: DayProblem, startsS: ArrayLike<number>, activity: number, edge: Edge): number {
  const startS = startsS[activity] ?? Number.NaN;
  return edge === 'start' ? startS : startS + (problem.activities[activity]?.durationS ?? Number.NaN);
}

/** How long a lag came out. */
export function lagS(problem: DayProblem, startsS: ArrayLike<number>, lag: number): number {
  const one = problem.lags[lag];
  if (one === undefined) return Number.NaN;
  return edgeS(problem, startsS, one.to, one.toEdge) - edgeS(problem, startsS, one.from, one.fromEdge);
}

/** Every hold on the resource that it came to lie on. */
export function layHolds(problem: DayProblem, { startsS, options }: Schedule): LaidHold[] {
  return problem.holds.map((hold, index) => {
    const option = 'choice' in hold.on ? (options[hold.on.choice] ?? 0) : 0;
    return {
      hold: index,
      resource: 'choice' in hold.on ? (problem.choices[hold.on.choice]?.options[option]?.resource ?? -1) : hold.on.resource,
      amount: 'choice' in hold.on ? (hold.on.amounts[option] ?? Number.NaN) : hold.on.amount,
      state: hold.states?.[option] ?? null,
      fromS: edgeS(problem, startsS, hold.from, hold.fromEdge),
      toS: edgeS(problem, startsS, hold.to, hold.toEdge) + hold.afterS,
      isBegun: isBegun(problem, hold),
    };
  });
}

function isBegun(problem: DayProblem, { from, on }: Hold): boolean {
  const choice = 'choice' in on ? problem.choices[on.choice] : undefined;
  const isSettled = choice === undefined || choice.fixedOption !== null || choice.options.length === 1;
  return problem.activities[from]?.fixedStartS !== null && isSettled;
}

function shapeFaults(problem: DayProblem, { startsS, options }: Schedule): string[] {
  const faults: string[] = [];
  if (startsS.length !== problem.activities.length)
    faults.push(`shape: ${startsS.length} starts for ${problem.activities.length} activities`);
  if (options.length !== problem.choices.length) faults.push(`shape: ${options.length} options for ${problem.choices.length} choices`);
  problem.activities.forEach(({ key }, index) => {
    if (!Number.isInteger(startsS[index])) faults.push(`shape: ${key} begins at no whole second (${startsS[index]})`);
  });
  problem.choices.forEach((choice, index) => {
    const option = options[index] ?? -1;
    if (choice.options[option] === undefined) faults.push(`option: choice ${index} has no option ${option}`);
    else if (choice.fixedOption !== null && choice.fixedOption !== option)
      faults.push(`option: choice ${index} takes ${option} and is fixed to ${choice.fixedOption}`);
  });
  return faults;
}

function startFaults(problem: DayProblem, { startsS }: Schedule): string[] {
  return problem.activities.flatMap(({ key, fixedStartS, releaseS }, index) => {
    const startS = startsS[index] ?? Number.NaN;
    if (fixedStartS !== null) return startS === fixedStartS ? [] : [`fixed: ${key} begins at ${startS} and stands at ${fixedStartS}`];
    return startS >= releaseS ? [] : [`release: ${key} begins at ${startS}, ${releaseS - startS} s before it may`];
  });
}

/** Between two that stand where they stand, a lag is what it is: nobody can keep it any more. */
function leastLagFaults(problem: DayProblem, { startsS }: Schedule): string[] {
  return problem.lags.flatMap(({ from, to, minS }, lag) => {
    const [before, after] = [problem.activities[from], problem.activities[to]];
    if (before?.fixedStartS !== null && after?.fixedStartS !== null) return [];
    const isS = lagS(problem, startsS, lag);
    return isS >= minS ? [] : [`minimum lag: ${before?.key} to ${after?.key} is ${isS} s, at least ${minS} wanted`];
  });
}

/** At every instant at which something begins or the calendar changes: what is held against what there is. */
function capacityFaults(problem: DayProblem, resource: PlanResource, on: readonly LaidHold[]): string[] {
  const changes = (resource.calendar ?? []).map((step) => step.fromS);
  const instants = [...new Set([...on.map((one) => one.fromS), ...changes])].sort((a, b) => a - b);
  return instants.flatMap((atS) => {
    const then = on.filter((one) => one.fromS <= atS && atS < one.toS);
    const heldAmount = then.reduce((sum, one) => sum + one.amount, 0);
    const most = capacityAt(resource, atS);
    // What is begun is there, whatever the calendar says; only something put beside it is a fault.
    if (heldAmount <= most || then.every((one) => one.isBegun || one.amount === 0)) return [];
    return [`capacity: ${placeOf(resource)} at ${atS} holds ${heldAmount} of ${most}: ${namesOf(problem, then)}`];
  });
}

/** How much of a resource there is at an instant. */
export function capacityAt(resource: PlanResource, atS: number): number {
  return resource.calendar?.findLast((step) => step.fromS <= atS)?.capacity ?? resource.capacity;
}

function sharingFaults(problem: DayProblem, resource: PlanResource, on: readonly LaidHold[]): string[] {
  if (!resource.sharesOneState) return [];
  return pairsOf(on.filter((one) => one.state !== null)).flatMap(([a, b]) => {
    const isTogether = a.fromS < b.toS && b.fromS < a.toS;
    if (!isTogether || a.state === b.state || (a.isBegun && b.isBegun)) return [];
    return [`state: ${placeOf(resource)} is in state ${a.state} and ${b.state} at once: ${namesOf(problem, [a, b])}`];
  });
}

/** From every hold to those that come next after it: none lies wholly between the two. */
function setupFaults(problem: DayProblem, resource: PlanResource, on: readonly LaidHold[]): string[] {
  const { setupS, stateAtFirst } = resource;
  if (setupS === null) return [];
  const inState = on.filter((one) => one.state !== null);
  const faults: string[] = [];
  for (const next of inState) {
    const before = inState.filter((one) => one !== next && one.toS <= next.fromS);
    const neighbours = before.filter((one) => !before.some((between) => between !== one && between.fromS >= one.toS));
    for (const one of neighbours) {
      const neededS = setupS[one.state ?? -1]?.[next.state ?? -1] ?? 0;
      if (next.fromS - one.toS >= neededS || (one.isBegun && next.isBegun)) continue;
      faults.push(`set-up: ${placeOf(resource)} has ${next.fromS - one.toS} of ${neededS} s between ${namesOf(problem, [one, next])}`);
    }
    const fromFirstS = stateAtFirst === null ? 0 : (setupS[stateAtFirst]?.[next.state ?? -1] ?? 0);
    if (before.length === 0 && !next.isBegun && next.fromS < fromFirstS)
      faults.push(`set-up: ${placeOf(resource)} has ${next.fromS} of ${fromFirstS} s before ${nameOf(problem, next)}`);
  }
  return faults;
}

function pairsOf(all: readonly LaidHold[]): (readonly [LaidHold, LaidHold])[] {
  return all.flatMap((a, index) => all.slice(index + 1).map((b) => [a, b] as const));
}

function placeOf({ kind, id }: PlanResource): string {
  return `${kind} ${id}`;
}

function namesOf(problem: DayProblem, laid: readonly LaidHold[]): string {
  return laid.map((one) => nameOf(problem, one)).join(', ');
}

function nameOf(problem: DayProblem, { hold }: LaidHold): string {
  const from = problem.holds[hold]?.from;
  return `${problem.activities[from ?? -1]?.key ?? '?'}'s hold ${hold}`;
}
