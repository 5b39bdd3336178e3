/** Whether the screen stays lit: `unknown` until the browser has answered. */
export type Lit = 'unknown' | 'lit' | 'mayDim';

/** What is used of the browser's screen wake lock (W3C Screen Wake Lock API). */
export interface ScreenLocks {
  request(type: 'screen'): Promise<{ addEventListener(type: 'release', listener: () => void): void }>;
}

/** What `StayLit` needs of its page. */
export interface LitSurroundings {
  /** The browser's wake locks; null where it has none, as everywhere but in a secure context. */
  readonly locks: ScreenLocks | null;
  /** The browser lets nobody hold the screen who is not seen. */
  isVisible(): boolean;
  /** What is known has changed. */
  changed(lit: Lit): void;
}

/** Keeps the screen lit where the browser can. Call `look` when the page opens, whenever it is seen again, and at a touch. */
export class StayLit {
  private readonly surroundings: LitSurroundings;
  private known: Lit = 'unknown';
  private isAsking = false;

  constructor(surroundings: LitSurroundings) {
    this.surroundings = surroundings;
  }

  /** Asks for the screen where it is not held. Never throws: a browser may refuse, as with a battery that is nearly empty. */
  async look(): Promise<void> {
    const { locks } = this.surroundings;
    if (locks === null) {
      this.know('mayDim');
      return;
    }
    if (this.isAsking || this.known === 'lit' || !this.surroundings.isVisible()) return;
    this.isAsking = true;
    try {
      const held = await locks.request('screen');
      held.addEventListener('release', () => this.released());
      this.know('lit');
    } catch (error) {
      // NotAllowedError, in the specification's words: the document is hidden, or the system or its user will not have it.
      if (!(error instanceof DOMException)) throw error;
      this.know('mayDim');
    } finally {
      this.isAsking = false;
    }
  }

  /** The browser lets go whenever the page is out of sight; that alone is no fault. */
  private released(): void {
    this.know(this.surroundings.isVisible() ? 'mayDim' : 'unknown');
  }

  private know(lit: Lit): void {
    if (this.known === lit) return;
    this.known = lit;
    this.surroundings.changed(lit);
  }
}
