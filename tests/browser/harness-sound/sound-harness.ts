import '../../../display/parts/no-eval.ts';
import { burstLengthS } from '../../../display/sound/bursts.ts';
import { scheduleBurst } from '../../../display/sound/schedule-burst.ts';
import type { CallLevel } from '../../../shared/floor/events.ts';

/** What the test calls in the page. */
export interface SoundHarness {
  /** A burst as samples of one channel, rendered offline from 0.1 s on. */
  renderBurst(burst: CallLevel, rateHz: number, volumePct: number): Promise<number[]>;
}

declare global {
  interface Window {
    soundHarness: SoundHarness;
  }
}

window.soundHarness = {
  async renderBurst(burst, rateHz, volumePct) {
    const context = new OfflineAudioContext(1, Math.ceil((0.1 + burstLengthS(burst) + 0.2) * rateHz), rateHz);
    scheduleBurst(context, burst, 0.1, volumePct);
    return [...(await context.startRendering()).getChannelData(0)];
  },
};
