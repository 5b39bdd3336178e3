import type { DayProblem, Edge, Hold } from '../day/problem.ts';

/** A hold with its times in a solution: `amount` of `resource` from `fromS` to `toS`, its turn-round included. */
export interface ResolvedHold {
  readonly index: number;
  readonly hold: Hold;
  readonly resource: number;
  readonly amount: number;
  readonly fromS: number;
  readonly toS: number;
  readonly state: number | null;
}

/** By how many seconds an edge of an activity is after its start. */
export function edgeAfterS(problem: DayProblem, activity: number, edge: Edge): number {
  return edge === 'start' ? 0 : (problem.activities[activity]?.durationS ?? 0);
}

/** When an edge of an activity is, in seconds after the problem's origin. */
export function edgeS(problem: DayProblem, startsS: Int32Array, activity: number, edge: Edge): number {
  return (startsS[activity] ?? 0) + edgeAfterS(problem, activity, edge);
}

/** Every hold of a problem as a solution has it. */
export function resolvedHolds(problem: DayProblem, startsS: Int32Array, options: Int32Array): readonly ResolvedHold[] {
  return problem.holds.map((hold, index) => {
    const option = 'choice' in hold.on ? (options[hold.on.choice] ?? 0) : 0;
    const resource = 'choice' in hold.on ? (problem.choices[hold.on.choice]?.options[option]?.resource ?? 0) : hold.on.resource;
    const amount = 'choice' in hold.on ? (hold.on.amounts[option] ?? 0) : hold.on.amount;
    return {
      index,
      hold,
      resource,
      amount,
      fromS: edgeS(problem, startsS, hold.from, hold.fromEdge),
      toS: edgeS(problem, startsS, hold.to, hold.toEdge) + hold.afterS,
      state: hold.states?.[option] ?? null,
    };
  });
}
