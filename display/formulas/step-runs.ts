import type { Step, Verb } from '../../shared/documents/method.ts';
import { unreachable } from '../../shared/result.ts';
import { usualSteps, type StepSurroundings } from './usual-step.ts';

/** A run of steps that usually come one behind the other. Minutes are those of each rest between. */
export type StepRun =
  | { readonly kind: 'mixing' }
  | { readonly kind: 'folds'; readonly count: number; readonly restMin: number }
  | { readonly kind: 'turns'; readonly count: number; readonly chillMin: number };

/** Most folds or turns that one run adds. */
export const MOST_IN_A_RUN = 6;
const MIXING: readonly Verb[] = ['add', 'firstSpeed', 'stand', 'secondSpeed', 'turnOut'];
/** A rest may be ended so much before its time, and lasts so much beyond it. Common practice. */
const EARLIEST_SHARE = 0.75;
const LATEST_SHARE = 1.75;

/** The steps of a run as they usually are, to be put in before the one at `index`. Common practice, to begin from. */
export function stepsOfRun(run: StepRun, index: number, surroundings: StepSurroundings): readonly Step[] {
  switch (run.kind) {
    case 'mixing':
      return usualSteps(MIXING, index, surroundings);
    case 'folds': {
      const verbs = Array.from({ length: run.count }, (): readonly Verb[] => ['bulk', 'fold']).flat();
      return usualSteps([...verbs, 'bulk'], index, surroundings, { bulk: { minutes: restMinutes(run.restMin) } });
    }
    case 'turns': {
      const verbs = Array.from({ length: run.count }, (): readonly Verb[] => ['sheet', 'turn', 'chill']).flat();
      return usualSteps(verbs, index, surroundings, { chill: { minutes: restMinutes(run.chillMin) } });
    }
    default:
      return unreachable(run);
  }
}

function restMinutes(targetMin: number): Step['minutes'] {
  return { earliest: Math.round(targetMin * EARLIEST_SHARE), target: targetMin, latest: Math.round(targetMin * LATEST_SHARE) };
}
