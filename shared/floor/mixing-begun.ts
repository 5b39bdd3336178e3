import type { Formula } from '../documents/formula.ts';
import type { Step } from '../documents/method.ts';
import type { Workpiece } from './state.ts';

/**
 * Index of the step with which a mixture is no longer only weighed: the first mixer speed, or, where no mixer runs, the
 * first step that neither weighs, feeds nor adds. The method's length where there is none.
 */
export function mixingIndex(method: readonly Step[]): number {
  const speed = method.findIndex((step) => step.verb === 'firstSpeed' || step.verb === 'secondSpeed');
  if (speed !== -1) return speed;
  const other = method.findIndex((step) => step.verb !== 'weigh' && step.verb !== 'feed' && step.verb !== 'add');
  return other === -1 ? method.length : other;
}

/**
 * Whether the mixing of a workpiece has begun: what goes in at the start is in and cannot be weighed otherwise. A pot that is being fed again
 * is weighed for that feed: how it ripened since the one before is behind it.
 */
export function isMixingBegun(formula: Formula, workpiece: Workpiece): boolean {
  if (formula.method.some(({ id, verb }) => verb === 'feed' && workpiece.steps[id]?.status === 'started')) return false;
  return formula.method.slice(mixingIndex(formula.method)).some((step) => workpiece.steps[step.id] !== undefined);
}
