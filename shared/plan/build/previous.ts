import type { DayProblem, Lag } from '../day/problem.ts';
import type { BuiltDay } from './built-day.ts';
import { groupedBy } from './grouped.ts';

/** Where everything was before: as planned; what no plan has, where its lags would have it. */
export function previousOf({ activities, lags, choices }: DayProblem): NonNullable<BuiltDay['previous']> {
  const startsS = new Int32Array(activities.length);
  const isKnown = new Uint8Array(activities.length);
  const before = groupedBy(lags, (lag) => lag.to);
  for (const [index, activity] of activities.entries()) {
    const planned = activity.fixedStartS ?? activity.previousStartS;
    startsS[index] = planned ?? Math.max(activity.releaseS, ...guesses(before.get(index) ?? []));
    isKnown[index] = 1;
  }
  return { startsS, options: Int32Array.from(choices, ({ fixedOption, previousOption }) => fixedOption ?? previousOption ?? 0) };

  function guesses(into: readonly Lag[]): readonly number[] {
    return into
      .filter((lag) => isKnown[lag.from] === 1)
      .map(({ from, fromEdge, to, toEdge, minS, targetS }) => {
        const fromS = (startsS[from] ?? 0) + (fromEdge === 'end' ? (activities[from]?.durationS ?? 0) : 0);
        return fromS + (targetS ?? minS) - (toEdge === 'end' ? (activities[to]?.durationS ?? 0) : 0);
      });
  }
}
