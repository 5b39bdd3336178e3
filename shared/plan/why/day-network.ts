import type { DayProblem } from '../day/problem.ts';
import { edgeAfterS, edgeS, resolvedHolds, type ResolvedHold } from './resolved-holds.ts';
import { giversOf } from './room-before.ts';

/** An activity begins at least so long after another: by a lag of the problem. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly byS: number;
}

/** The same, because the one gives a resource to the other: the order in which the day has them. */
export interface Turn extends Link {
  readonly resource: number;
  /** So much of it is waited for. */
  readonly amount: number;
  /** When the resource is given on in the day as it stands, a set-up included. */
  readonly untilS: number;
}

/** An activity takes of a resource that is not always there: so long from its start on. */
export interface Manned {
  readonly activity: number;
  readonly resource: number;
  readonly amount: number;
  readonly fromAfterS: number;
  readonly toAfterS: number;
}

/** A solved day as what waits for what, so that it can be asked how early things could be without one thing or another. */
export interface DayNetwork {
  readonly problem: DayProblem;
  readonly startsS: Int32Array;
  readonly links: readonly Link[];
  readonly turns: readonly Turn[];
  readonly manned: readonly Manned[];
  /** By resource. */
  readonly holds: readonly (readonly ResolvedHold[])[];
}

export interface Solved {
  readonly startsS: Int32Array;
  readonly options: Int32Array;
}

/** The network of a solved day. What the day does not keep (a lag that spoils, room that is not there) is left out of it. */
export function networkOf(problem: DayProblem, { startsS, options }: Solved): DayNetwork {
  const holds = resolvedHolds(problem, startsS, options).filter(({ fromS, toS }) => toS > fromS);
  const byResource = problem.resources.map((): ResolvedHold[] => []);
  for (const hold of holds) byResource[hold.resource]?.push(hold);
  return {
    problem,
    startsS,
    links: linksOf(problem, startsS),
    turns: problem.resources.flatMap((resource, index) =>
      giversOf(resource, byResource[index] ?? []).map(({ own, by, setupS }) => turnOf(problem, index, own, by, setupS)),
    ),
    manned: holds.flatMap((own) => mannedOf(problem, startsS, own)),
    holds: byResource,
  };
}

function linksOf(problem: DayProblem, startsS: Int32Array): readonly Link[] {
  return problem.lags.flatMap((lag): Link[] => {
    const gapS = edgeS(problem, startsS, lag.to, lag.toEdge) - edgeS(problem, startsS, lag.from, lag.fromEdge);
    const edgesS = edgeAfterS(problem, lag.from, lag.fromEdge) - edgeAfterS(problem, lag.to, lag.toEdge);
    const forth = gapS < lag.minS ? [] : [{ from: lag.from, to: lag.to, byS: edgesS + lag.minS }];
    return lag.mostS === null || gapS > lag.mostS ? forth : [...forth, { from: lag.to, to: lag.from, byS: -edgesS - lag.mostS }];
  });
}

function turnOf(problem: DayProblem, resource: number, own: ResolvedHold, by: ResolvedHold, setupS: number): Turn {
  const { hold } = by;
  return {
    from: hold.to,
    to: own.hold.from,
    byS: edgeAfterS(problem, hold.to, hold.toEdge) + hold.afterS + setupS - edgeAfterS(problem, own.hold.from, own.hold.fromEdge),
    resource,
    amount: own.amount,
    untilS: by.toS + setupS,
  };
}

/** Longer holds reach over what others do: there the calendar is looked at where they begin. */
function mannedOf(problem: DayProblem, startsS: Int32Array, own: ResolvedHold): readonly Manned[] {
  if ((problem.resources[own.resource]?.calendar ?? null) === null) return [];
  const activity = own.hold.from;
  const startS = startsS[activity] ?? 0;
  const toS = own.hold.to === activity ? own.toS - own.hold.afterS : own.fromS + 1;
  return [{ activity, resource: own.resource, amount: own.amount, fromAfterS: own.fromS - startS, toAfterS: toS - startS }];
}
