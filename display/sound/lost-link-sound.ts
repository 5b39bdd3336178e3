import type { Connection } from '../link/floor-link.ts';

/** So long without a server, and the wall says so aloud: once, since nobody may be looking. Real ms. */
export const LOST_LINK_SOUND_MS = 30_000;

/** What it needs of its page. */
export interface LostLinkSurroundings {
  /** Calls back after so many real ms; returns what cancels it. */
  after(ms: number, callback: () => void): () => void;
  sound(): void;
}

/** Sounds once when the link has been lost for 30 s, and again only after the link has stood in between. */
export class LostLinkSound {
  private readonly surroundings: LostLinkSurroundings;
  private cancel: (() => void) | null = null;
  private isLost = false;

  constructor(surroundings: LostLinkSurroundings) {
    this.surroundings = surroundings;
  }

  /** Told of every change of the connection. `goneMs` is how long ago the server's last word is, in real ms. */
  follow(connection: Connection, goneMs: number): void {
    if (connection.phase === 'live') {
      this.cancel?.();
      this.cancel = null;
      this.isLost = false;
      return;
    }
    if (connection.phase !== 'lost' || this.isLost) return;
    this.isLost = true;
    this.cancel = this.surroundings.after(Math.max(0, LOST_LINK_SOUND_MS - goneMs), () => {
      this.cancel = null;
      this.surroundings.sound();
    });
  }
}
