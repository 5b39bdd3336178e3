import { endsByNext, type Step } from '../../shared/documents/method.ts';

const MINUTE_MS = 60_000;

/** An earlier step of the same dough, with its wanted length and its longest, as they hold for it. */
export interface Begun {
  readonly stepId: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly targetMin: number;
  readonly latestMin: number | null;
}

/**
 * Until when a step may begin without harm: a rest or bake before it is not to last longer than its latest, it bears
 * only its own tolerance after that is due or after the work before it is done, and its links to earlier steps have
 * their latest. Null where the method sets no end. `before` are the steps so far, the last one `previous`'s.
 */
export function latestStartMs(step: Step, previous: Step | null, before: readonly Begun[]): number | null {
  const last = before.at(-1);
  const limits: number[] = [];
  const { lost } = step.toleranceMin;
  if (last !== undefined && previous !== null && last.stepId === previous.id) {
    const dueMs = endsByNext(previous) ? last.fromMs + last.targetMin * MINUTE_MS : last.toMs;
    // More time, given knowingly, moves the latest along once it reaches beyond it.
    if (endsByNext(previous) && last.latestMin !== null) limits.push(Math.max(last.fromMs + last.latestMin * MINUTE_MS, dueMs));
    if (lost !== undefined) limits.push(dueMs + lost * MINUTE_MS);
  }
  for (const link of step.after ?? []) {
    const linked = before.find((earlier) => earlier.stepId === link.step);
    if (linked === undefined || link.latestMin === undefined) continue;
    limits.push((link.from === 'start' ? linked.fromMs : linked.toMs) + link.latestMin * MINUTE_MS);
  }
  return limits.length === 0 ? null : Math.min(...limits);
}
