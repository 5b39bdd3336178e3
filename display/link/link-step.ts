import type { LinkEffect, LinkState } from './link-state.ts';

/** What follows from one input: the next state, and what the page is to do. */
export interface LinkStep {
  readonly link: LinkState;
  readonly effects: readonly LinkEffect[];
}

/** A step that only changes the state. */
export function become(link: LinkState, ...effects: readonly LinkEffect[]): LinkStep {
  return { link, effects };
}

/** A step followed by what comes of its state. */
export function andThen(step: LinkStep, next: (link: LinkState) => LinkStep): LinkStep {
  const following = next(step.link);
  return { link: following.link, effects: [...step.effects, ...following.effects] };
}
