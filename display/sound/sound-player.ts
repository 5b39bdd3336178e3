import type { CallLevel } from '../../shared/floor/events.ts';
import type { SoundReadiness } from '../../shared/wire/up.ts';
import { burstLengthS } from './bursts.ts';
import { scheduleBurst } from './schedule-burst.ts';

/** Chromium leaves `resume()` pending for ever where no touch has allowed sound: it is given so long. Real ms. */
const RESUME_WAIT_MS = 400;
/** A first tone that has not ended after so long did not sound: the loudspeaker went away under the context. Real ms. */
const FIRST_TONE_WAIT_MS = 1500;
/** From asking to the first tone, in s: enough for the audio thread to see it coming. */
const LEAD_S = 0.03;
/** Between two bursts asked for at once, in s: run together, neither rhythm could be told. */
const APART_S = 0.6;

/** What the player needs of its page. */
export interface SoundSurroundings {
  /** Makes the page's audio context; null where the browser has none. */
  readonly createContext: (() => AudioContext) | null;
  /** Resolves after so many real ms. */
  wait(ms: number): Promise<void>;
}

/** The page's loudspeaker: knows whether it can sound, and sounds the bursts. */
export class SoundPlayer {
  private readonly surroundings: SoundSurroundings;
  private readonly listeners = new Set<() => void>();
  private context: AudioContext | null = null;
  private shown: SoundReadiness;
  /** When the last burst is over, by the context's clock. */
  private busyUntilS = 0;
  /** Where the context's clock stood when it was last looked at. */
  private seenS: number | null = null;

  constructor(surroundings: SoundSurroundings) {
    this.surroundings = surroundings;
    this.shown = surroundings.createContext === null ? 'none' : 'waiting';
  }

  /** `on`: it sounds. `waiting`: somebody has to touch the page first. `none`: this browser has no sound. */
  get readiness(): SoundReadiness {
    return this.shown;
  }

  /** Called when the readiness changes. Returns the unsubscriber. */
  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Tries to turn the sound on; call it when the page opens and at every touch and key. Never waits long. */
  async turnOn(): Promise<SoundReadiness> {
    const context = this.contextOrNull();
    if (context === null) return 'none';
    if (context.state !== 'running') {
      // The wait bounds it; a refusal only means that nobody has touched the page yet.
      const resumed = context.resume().catch(() => undefined);
      await Promise.race([resumed, this.surroundings.wait(RESUME_WAIT_MS)]);
    }
    this.look();
    return this.shown;
  }

  /** Sounds a burst, `volumePct` percent as loud as can be. True once its first tone has really run out of a running context, false where it could not. */
  async play(burst: CallLevel, volumePct: number): Promise<boolean> {
    if ((await this.turnOn()) !== 'on') return false;
    const context = this.contextOrNull();
    if (context === null) return false;
    const startS = Math.max(context.currentTime + LEAD_S, this.busyUntilS === 0 ? 0 : this.busyUntilS + APART_S);
    this.busyUntilS = startS + burstLengthS(burst);
    const first = scheduleBurst(context, burst, startS, volumePct);
    const waitMs = (startS - context.currentTime) * 1000 + FIRST_TONE_WAIT_MS;
    const ended = new Promise<boolean>((resolve) => {
      first.addEventListener('ended', () => resolve(true), { once: true });
    });
    return Promise.race([ended, this.surroundings.wait(waitMs).then(() => false)]);
  }

  /**
   * Looks whether the audio clock still goes; call it every few seconds. A context may say that it runs while its device is gone, and nothing
   * it is given would ever sound: such a one is given up for a new one.
   */
  async watch(): Promise<void> {
    const { context } = this;
    if (context === null || context.state !== 'running') {
      this.seenS = null;
      return;
    }
    const stands = context.currentTime === this.seenS;
    this.seenS = context.currentTime;
    if (!stands) return;
    this.context = null;
    this.seenS = null;
    this.busyUntilS = 0;
    this.look();
    // A clock that stands may never let itself be closed; nobody waits for it.
    context.close().catch(() => undefined);
    await this.turnOn();
  }

  private contextOrNull(): AudioContext | null {
    if (this.context !== null || this.surroundings.createContext === null) return this.context;
    this.context = this.surroundings.createContext();
    this.context.addEventListener('statechange', () => this.look());
    return this.context;
  }

  private look(): void {
    const now: SoundReadiness = this.context?.state === 'running' ? 'on' : 'waiting';
    if (now === this.shown) return;
    this.shown = now;
    for (const listener of this.listeners) listener();
  }
}
