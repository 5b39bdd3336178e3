import type { Step } from '../../shared/documents/method.ts';

/** Where a step lies on the line of all steps, as shares of the whole length. */
export interface WayStretch {
  readonly fromShare: number;
  readonly share: number;
}

/** Targets one behind the other, in minutes; what is half typed counts as nothing. */
export function wayMin(steps: readonly Step[]): number {
  return steps.reduce((sum, step) => sum + lengthMin(step), 0);
}

/** How much of them somebody works with the hands, in minutes. */
export function handsMin(steps: readonly Step[]): number {
  return wayMin(steps.filter((step) => step.kind === 'hands'));
}

/** The steps to scale, one behind the other. Empty steps have no length. */
export function wayStretches(steps: readonly Step[]): readonly WayStretch[] {
  const wholeMin = wayMin(steps);
  let doneMin = 0;
  return steps.map((step) => {
    const fromMin = doneMin;
    doneMin += lengthMin(step);
    return wholeMin === 0 ? { fromShare: 0, share: 0 } : { fromShare: fromMin / wholeMin, share: lengthMin(step) / wholeMin };
  });
}

function lengthMin({ minutes: { target } }: Step): number {
  return Number.isFinite(target) && target > 0 ? target : 0;
}
