import type { Step } from '../documents/method.ts';

/** Fewer times than these are no evidence (our choice). */
export const LEAST_TIMES = 8;
/** The interval of the median has to leave what is assumed by more than this, and by more than the share of it (our choice). */
export const MARGIN_MIN = 1;
export const MARGIN_SHARE = 0.1;

/** By how much a figure has to differ from minutes to be worth telling. */
export function marginMin(minutes: number): number {
  return Math.max(MARGIN_MIN, minutes * MARGIN_SHARE);
}

/** What is found of a step's minutes. */
export interface FoundMinutes {
  readonly n: number;
  readonly medianLow: number;
  readonly medianHigh: number;
  readonly estimate: number;
}

/** What to write instead of the minutes that are assumed, in whole minutes; null where the evidence is not enough. */
export function proposedMin({ n, medianLow, medianHigh, estimate }: FoundMinutes, assumedMin: number): number | null {
  if (n < LEAST_TIMES) return null;
  const margin = marginMin(assumedMin);
  if (medianLow <= assumedMin + margin && medianHigh >= assumedMin - margin) return null;
  const toMin = Math.max(0, Math.round(estimate));
  // A median that is drawn back to where the document is proposes nothing.
  return Math.abs(toMin - assumedMin) < MARGIN_MIN ? null : toMin;
}

/** A proposal that somebody left as it is: what was assumed, and what was found instead. */
export interface LeftMinutes {
  readonly assumedMin: number;
  readonly foundMin: number;
}

/** Whether a proposal is the one that was left: it is offered again only once it has moved, or the document says something else. */
export function isLeft({ assumedMin, foundMin }: LeftMinutes, proposal: { readonly fromMin: number; readonly toMin: number }): boolean {
  return proposal.fromMin === assumedMin && Math.abs(proposal.toMin - foundMin) <= marginMin(foundMin);
}

/** Whether the minutes of a step can be written anew: a bake's are its phases', and what ripens or bakes goes by what was learned already. */
export function takesMinutes({ kind, ripening }: Pick<Step, 'kind' | 'ripening'>): boolean {
  return kind !== 'bake' && ripening === undefined;
}

/** Steps with another target for one of them; its earliest and latest give way where they would no longer hold it between them. */
export function withTarget(steps: readonly Step[], stepId: string, targetMin: number): Step[] {
  return steps.map((step) => {
    if (step.id !== stepId) return step;
    const { earliest, latest } = step.minutes;
    return {
      ...step,
      minutes: {
        target: targetMin,
        ...(earliest === undefined ? {} : { earliest: Math.min(earliest, targetMin) }),
        ...(latest === undefined ? {} : { latest: Math.max(latest, targetMin) }),
      },
    };
  });
}
