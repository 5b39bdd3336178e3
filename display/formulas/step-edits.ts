import type { Step } from '../../shared/documents/method.ts';
import { stepKey } from './step-key.ts';

/** Steps with others put in before the one at `index`; at the end where it is their count. */
export function withStepsAt(steps: readonly Step[], index: number, added: readonly Step[]): readonly Step[] {
  return [...steps.slice(0, index), ...added, ...steps.slice(index)];
}

/** Steps without the one at `index`. What pointed to it still does, and is told as a fault where it stands. */
export function withoutStep(steps: readonly Step[], index: number): readonly Step[] {
  return steps.filter((_step, at) => at !== index);
}

/** Steps with the one at `index` one place earlier or later; the same where it is the first or the last. */
export function withStepMoved(steps: readonly Step[], index: number, by: -1 | 1): readonly Step[] {
  const step = steps[index];
  if (step === undefined || index + by < 0 || index + by >= steps.length) return steps;
  return withStepsAt(withoutStep(steps, index), index + by, [step]);
}

/** Steps with a second one like that at `index` behind it, under a key that neither `steps` nor `otherKeys` have. */
export function withStepDoubled(steps: readonly Step[], index: number, otherKeys: readonly string[]): readonly Step[] {
  const step = steps[index];
  if (step === undefined) return steps;
  return withStepsAt(steps, index + 1, [{ ...step, id: stepKey(step.verb, takenKeys(steps, otherKeys)) }]);
}

/** Every key that a new step cannot have. */
export function takenKeys(steps: readonly Step[], otherKeys: readonly string[]): ReadonlySet<string> {
  return new Set([...steps.map((step) => step.id), ...otherKeys]);
}
