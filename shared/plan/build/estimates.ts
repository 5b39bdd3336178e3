import { targetMin, type Step } from '../../documents/method.ts';
import type { BuildContext } from './context.ts';
import type { PlanBefore } from './plan-before.ts';
import { leavesOf, type Thread } from './thread.ts';

const MINUTE_MS = 60_000;

/** When things would be, before anything is planned: enough to say which pot and which order a dough is for. */
export class Estimates {
  private readonly context: BuildContext;
  private readonly plan: PlanBefore;
  private readonly dues = new Map<Thread, number>();

  constructor(context: BuildContext, plan: PlanBefore) {
    this.context = context;
    this.plan = plan;
  }

  /** A leaf's pieces are wanted by then: all that leads to them is reckoned back from it. */
  wanted(leaf: Thread, dueMs: number): void {
    this.dues.set(leaf, Math.min(dueMs, this.dues.get(leaf) ?? Infinity));
  }

  /** When a thread would be through, if every step took its target from when it is planned or stands. */
  endMs(thread: Thread): number {
    const last = thread.steps.at(-1);
    const planned = last === undefined ? null : this.plan.step(thread, last.id);
    if (planned !== null) return planned.plannedEndMs ?? planned.plannedStartMs + lengthMs(thread, last);
    return this.fromMs(thread) + aheadMs(thread);
  }

  /** When a step of a thread would begin: as planned; or so long before it is wanted as its way takes; or as it stands. */
  stepMs(thread: Thread, step: Step): number {
    const planned = this.plan.step(thread, step.id);
    if (planned !== null) return planned.plannedStartMs;
    const index = thread.steps.indexOf(step);
    const dueMs = this.dueOf(thread);
    if (dueMs !== null) return dueMs - sumMs(thread, thread.steps.slice(index));
    return (
      this.fromMs(thread) +
      sumMs(
        thread,
        thread.steps.slice(0, index).filter((earlier) => thread.lives[earlier.id] === undefined),
      )
    );
  }

  /** When all of a thread's own steps have to be through. */
  private dueOf(thread: Thread): number | null {
    if (thread.children.length === 0) return this.dues.get(thread) ?? null;
    const dues = thread.children.flatMap((child) => {
      const dueMs = this.dueOf(child);
      return dueMs === null ? [] : [dueMs - sumMs(child, child.steps)];
    });
    return dues.length === 0 ? null : Math.min(...dues);
  }

  private fromMs(thread: Thread): number {
    if (thread.parent !== null) return this.endMs(thread.parent);
    const { workpiece, startMs, notBeforeMs } = thread;
    const { nowMs } = this.context;
    if (workpiece !== null && startMs === null) return Math.max(nowMs, workpiece.readyMs);
    return Math.max(nowMs, startMs ?? notBeforeMs ?? nowMs);
  }
}

/** The ways of all leaves of several threads. */
export function allLeaves(threads: readonly Thread[]): readonly Thread[] {
  return threads.flatMap(leavesOf);
}

function aheadMs(thread: Thread): number {
  return sumMs(
    thread,
    thread.steps.filter((step) => (thread.lives[step.id]?.endedMs ?? null) === null),
  );
}

function sumMs(thread: Thread, steps: readonly Step[]): number {
  return steps.reduce((sum, step) => sum + lengthMs(thread, step), 0);
}

function lengthMs({ pieces }: Thread, step: Step | undefined): number {
  return step === undefined ? 0 : targetMin(step, pieces) * MINUTE_MS;
}
