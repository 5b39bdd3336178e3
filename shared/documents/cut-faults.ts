import type { Formula } from './formula.ts';
import type { Fault } from './kitchen-faults.ts';

/** What is impossible in how many cuts a batch of a formula has. */
export function checkCuts(formula: Formula, cutCount: number, path: string, fault: Fault): void {
  if (formula.kind === 'dough' && cutCount === 0) fault(path, { code: 'cutsMissing' });
  if (cutCount < 2) return;
  if (formula.method.at(-1)?.verb !== 'divide') fault(path, { code: 'divideNotLast', formula: formula.id });
  if (formula.method.slice(0, -1).some((step) => step.verb === 'divide')) fault(path, { code: 'divideTwice', formula: formula.id });
}

/** What is impossible in how much is made, in grams: less than `leastG` is nothing. */
export function checkWeight(grams: number, leastG: number, path: string, fault: Fault): void {
  if (grams < leastG) fault(path, { code: 'weightNeeded' });
}
