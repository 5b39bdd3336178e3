import { assert } from '../result.ts';
import { driftedC, type Drift, type Surroundings } from './dough-drift.ts';

/** A dough that was put somewhere, or whose place changed about it: a tub moved, a retarder's programme, a door left open. */
export interface Stay extends Surroundings {
  readonly fromMin: number;
}

/** A dough's temperature that was measured. */
export interface DoughReading {
  readonly atMin: number;
  readonly doughC: number;
}

/** A drift that lasts until the next one of its course begins; the last goes on. */
export interface CoursePart extends Drift {
  readonly fromMin: number;
}

/** A dough's temperature over time: one part or more, in the order of time. Minutes count from any instant, the same for all. */
export type DoughCourse = readonly CoursePart[];

/**
 * The course of a dough's temperature from where it stood (`stays`, in the order of time, one or more) and what was measured (`readings`
 * in any order). It begins with the first stay at `startC`; each stay goes on from the temperature that the one before led to, and
 * each reading begins anew from what it says. A reading from before the first stay says where it starts. One that agrees changes nothing.
 */
export function doughCourse({
  startC,
  stays,
  readings,
}: {
  readonly startC: number;
  readonly stays: readonly Stay[];
  readonly readings: readonly DoughReading[];
}): DoughCourse {
  const [first] = stays;
  assert(first !== undefined, 'a course has a stay');
  const inOrder = [...readings].sort((a, b) => a.atMin - b.atMin);
  const before = inOrder.findLast(({ atMin }) => atMin <= first.fromMin);
  const parts: CoursePart[] = [{ ...first, doughC: before?.doughC ?? startC }];
  const events = [...stays.slice(1), ...inOrder.filter(({ atMin }) => atMin > first.fromMin)].sort((a, b) => instantOf(a) - instantOf(b));
  for (const event of events) parts.push(nextPart(parts, event));
  return parts;
}

function instantOf(event: Stay | DoughReading): number {
  return 'atMin' in event ? event.atMin : event.fromMin;
}

function nextPart(parts: readonly CoursePart[], event: Stay | DoughReading): CoursePart {
  const last = parts[parts.length - 1];
  assert(last !== undefined, 'a course has begun');
  if ('atMin' in event) return { ...last, fromMin: event.atMin, doughC: event.doughC };
  const { fromMin, ambientC, tauMin, selfHeatKPerH } = event;
  return { fromMin, ambientC, tauMin, selfHeatKPerH, doughC: driftedC(last, fromMin - last.fromMin) };
}

/** The dough's temperature at an instant of its course, in °C; before it begins, that of its beginning. */
export function courseC(course: DoughCourse, atMin: number): number {
  const part = course.findLast(({ fromMin }) => fromMin <= atMin) ?? course[0];
  assert(part !== undefined, 'a course has a part');
  return driftedC(part, Math.max(0, atMin - part.fromMin));
}
