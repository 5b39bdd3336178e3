import { unreachable } from '../../shared/result.ts';
import type { ProposalAsk } from '../../shared/plan/plan-api.ts';
import type { TentativeChange } from '../../shared/plan/tentative-change.ts';

/** What is to be tried otherwise in the next proposal, and in no order and on no floor. */
export type TriedChange =
  | TentativeChange
  | { readonly kind: 'first'; readonly orderId: string }
  /** `key` names the step as the planner does. */
  | { readonly kind: 'startsAt'; readonly key: string; readonly startMs: number };

/** The changes with one more; another of its kind about the same thing gives way. */
export function withTried(tried: readonly TriedChange[], change: TriedChange): readonly TriedChange[] {
  return [...tried.filter((other) => topicOf(other) !== topicOf(change)), change];
}

/** What is asked of the planner with these changes. */
export function askWith(serviceDate: string, tried: readonly TriedChange[]): ProposalAsk {
  return {
    serviceDate,
    pins: tried.flatMap((change) => (change.kind === 'startsAt' ? [{ key: change.key, startMs: change.startMs }] : [])),
    firstOrderIds: tried.flatMap((change) => (change.kind === 'first' ? [change.orderId] : [])),
    changes: tried.filter((change) => change.kind !== 'first' && change.kind !== 'startsAt'),
    seed: 1,
  };
}

/** The changes with which a day was asked for. */
export function triedIn({ pins, firstOrderIds, changes }: ProposalAsk): readonly TriedChange[] {
  return [
    ...changes,
    ...firstOrderIds.map((orderId) => ({ kind: 'first', orderId }) as const),
    ...pins.map(({ key, startMs }) => ({ kind: 'startsAt', key, startMs }) as const),
  ];
}

/** An order is later and has fewer pieces at once, but it is not left out as well. */
function topicOf(change: TriedChange): string {
  switch (change.kind) {
    case 'readyLater':
    case 'fewerPieces':
    case 'first':
      return `${change.kind} ${change.orderId}`;
    case 'leaveOut':
      return `leaveOut ${change.orderId}`;
    case 'startsAt':
      return `startsAt ${change.key}`;
    default:
      return unreachable(change);
  }
}
