import type { Step } from '../../shared/documents/method.ts';

const OUT = { bubbles: true, composed: true } as const;

/** Steps are to be put in before the one at `index`. */
export class StepsAddedEvent extends Event {
  static readonly type = 'steps-added';
  readonly index: number;
  readonly steps: readonly Step[];

  constructor(index: number, steps: readonly Step[]) {
    super(StepsAddedEvent.type, OUT);
    this.index = index;
    this.steps = steps;
  }
}

declare global {
  interface HTMLElementEventMap {
    'steps-added': StepsAddedEvent;
  }
}
