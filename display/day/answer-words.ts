import { unreachable } from '../../shared/result.ts';
import type { Given } from '../formulas/book-store.ts';
import { DAY, PLANNING, STANDING } from '../words/day.ts';
import { refusalWords, type RefusalFacts } from '../words/refusals.ts';
import type { NotDone } from './plan-desk.ts';

/** Why the house did not do what it was told. */
export function givenText(given: Exclude<Given, { phase: 'done' }>, facts: RefusalFacts): string {
  switch (given.phase) {
    case 'refused':
      if (given.refusal.code === 'documentChanged') return STANDING.overtaken;
      return `${DAY.refused} ${refusalWords(given.refusal, facts)}`;
    case 'forbidden':
      return DAY.forbidden;
    case 'unsent':
      return DAY.unsent;
    default:
      return unreachable(given);
  }
}

/** Why the planner did not do what it was asked. */
export function notDoneText(notDone: NotDone, facts: RefusalFacts): string {
  switch (notDone.phase) {
    case 'refused':
      return `${DAY.refused} ${notDone.refusal === null ? notDone.detail : refusalWords(notDone.refusal, facts)}`;
    case 'forbidden':
      return DAY.forbidden;
    case 'missing':
      return PLANNING.outdated;
    case 'failed':
      return DAY.unsent;
    default:
      return unreachable(notDone);
  }
}
