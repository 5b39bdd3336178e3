import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Look } from '../parts/look.ts';

/** The page is to be light or dark from now on. */
export class LookNowEvent extends Event {
  static readonly type = 'look-now';
  readonly look: Look;

  constructor(look: Look) {
    super(LookNowEvent.type);
    this.look = look;
  }
}

/** Says `look-now` from its host whenever the look that holds has changed, in the same drawing as the clock's text. */
export class LookNow implements ReactiveController {
  private readonly host: ReactiveControllerHost & EventTarget;
  private readonly lookNow: () => Look;
  private told: Look | null = null;

  constructor(host: ReactiveControllerHost & EventTarget, lookNow: () => Look) {
    this.host = host;
    this.lookNow = lookNow;
  }

  hostUpdated(): void {
    const look = this.lookNow();
    if (look === this.told) return;
    this.told = look;
    this.host.dispatchEvent(new LookNowEvent(look));
  }
}

declare global {
  interface HTMLElementEventMap {
    'look-now': LookNowEvent;
  }
}
