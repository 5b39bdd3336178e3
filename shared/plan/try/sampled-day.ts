import type { BuiltDay } from '../build/built-day.ts';
import type { Activity, DayProblem, Lag } from '../day/problem.ts';
import type { Random } from '../core/random.ts';
import type { Spread } from './try-result.ts';

/** No step is played faster or slower than so many times its length. */
const LEAST_TIMES = 0.5;
const MOST_TIMES = 2.5;

/**
 * One day as it might come: work, bakes and rests drawn about their planned lengths. Lengths are log-normal with the
 * planned one as their median, since work overruns further than it gains. A rest that ripens slower or faster has its
 * earliest, target and latest moved alike.
 */
export function sampledDay(built: BuiltDay, spreads: readonly Spread[], random: Random): DayProblem {
  const { problem } = built;
  const spreadOf = new Map(spreads.map(({ kind, spread }) => [kind, spread]));
  const timesOf = (kind: Spread['kind']): number => {
    const sigma = Math.sqrt(Math.log(1 + (spreadOf.get(kind) ?? 0) ** 2));
    return Math.min(MOST_TIMES, Math.max(LEAST_TIMES, Math.exp(sigma * normal(random))));
  };
  const lags = new Map<number, number>();
  for (const rest of built.rests) {
    const times = timesOf('rest');
    for (const lag of rest.lags) lags.set(lag, times);
  }
  return {
    ...problem,
    activities: problem.activities.map((activity, index): Activity => {
      const kind = built.steps[index]?.kind;
      // What has begun or is over is known; only what is ahead is drawn.
      if (activity.fixedStartS !== null || activity.durationS === 0 || kind === undefined || kind === 'timed') return activity;
      return { ...activity, durationS: Math.max(1, Math.round(activity.durationS * timesOf(kind))) };
    }),
    lags: problem.lags.map((lag, index): Lag => {
      const times = lags.get(index);
      return times === undefined ? lag : stretched(lag, times);
    }),
  };
}

/** The dough is ready when it is: its target is the least that is waited, its latest moves along. */
function stretched(lag: Lag, times: number): Lag {
  const readyS = Math.round((lag.targetS ?? lag.minS) * times);
  return {
    ...lag,
    minS: Math.max(Math.min(lag.minS, readyS), Math.min(readyS, lag.mostS ?? readyS)),
    mostS: lag.mostS === null ? null : Math.max(Math.round(lag.mostS * times), readyS),
    targetS: lag.targetS === null ? null : readyS,
  };
}

/** A standard normal number, by Box and Muller (1958). */
function normal(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random.share()));
  return radius * Math.cos(2 * Math.PI * random.share());
}
