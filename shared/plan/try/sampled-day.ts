import type { BuiltDay } from '../build/built-day.ts';
import type { Activity, DayProblem, Lag } from '../day/problem.ts';
import type { Random } from '../core/random.ts';
import { edgeS } from '../why/resolved-holds.ts';
import type { Spread } from './try-result.ts';

/** No step is played faster or slower than so many times its length. */
const LEAST_TIMES = 0.5;
const MOST_TIMES = 2.5;

/**
 * One day as it might come: work, bakes and rests drawn about their planned lengths, `startsS` being where the plan has
 * everything. Lengths are log-normal, since work overruns further than it gains: with the mean and the deviation of the
 * spreads, and with a median of the planned length where nothing was learned. Without any spread it is the planned day.
 */
export function sampledDay(built: BuiltDay, startsS: Int32Array, spreads: readonly Spread[], random: Random): DayProblem {
  const { problem } = built;
  const spreadOf = new Map(spreads.map((spread) => [spread.kind, spread]));
  const timesOf = (kind: Spread['kind']): number => {
    const spread = spreadOf.get(kind);
    return spread === undefined ? 1 : Math.min(MOST_TIMES, Math.max(LEAST_TIMES, logNormal(spread, random)));
  };
  const times = new Map<number, number>();
  for (const rest of built.rests) {
    const drawn = timesOf('rest');
    for (const lag of rest.lags) times.set(lag, drawn);
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
      const drawn = times.get(index);
      if (drawn === undefined) return lag;
      const plannedS = edgeS(problem, startsS, lag.to, lag.toEdge) - edgeS(problem, startsS, lag.from, lag.fromEdge);
      return stretched(lag, drawn, plannedS);
    }),
  };
}

/**
 * A dough that ripens slower or faster: as ripe as the plan wants it, at its target or before it where the day is short, it
 * is so much later or sooner, and so is its latest. What the plan lets it wait beyond its target it need not wait.
 */
function stretched(lag: Lag, times: number, plannedS: number): Lag {
  const wantedS = Math.max(lag.minS, Math.min(lag.targetS ?? lag.minS, plannedS));
  const readyS = Math.round(wantedS * times);
  return {
    ...lag,
    minS: readyS,
    mostS: lag.mostS === null ? null : Math.max(Math.round(lag.mostS * times), readyS),
    targetS: lag.targetS === null ? null : Math.max(readyS, Math.round(lag.targetS * times)),
  };
}

/**
 * A log-normal number of that mean and coefficient of variation: its logarithm is normal with variance ln(1 + spread²) and
 * mean ln(mean) less half of that (textbook formulas, from memory).
 */
function logNormal({ mean, spread }: Spread, random: Random): number {
  const variance = Math.log(1 + spread ** 2);
  return mean * Math.exp(Math.sqrt(variance) * normal(random) - variance / 2);
}

/** A standard normal number, by Box and Muller (1958). */
function normal(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random.share()));
  return radius * Math.cos(2 * Math.PI * random.share());
}
