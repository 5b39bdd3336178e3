import type { Activity, DayProblem, Edge, Lag } from './problem.ts';

/** How far an edge of an activity lies after its start, in seconds. */
export function edgeOffsetS(activity: Activity, edge: Edge): number {
  switch (edge) {
    case 'start':
      return 0;
    case 'end':
      return activity.durationS;
  }
}

/** The activity with that index. @throws where the problem names one that it has not. */
export function activityAt(problem: DayProblem, index: number): Activity {
  const activity = problem.activities[index];
  if (activity === undefined) throw new RangeError(`the day has no activity ${index}`);
  return activity;
}

/** What has to be added to a lag's seconds so that they count from start to start. */
export function startToStartS(problem: DayProblem, lag: Lag): number {
  return edgeOffsetS(activityAt(problem, lag.from), lag.fromEdge) - edgeOffsetS(activityAt(problem, lag.to), lag.toEdge);
}
