import type { CallLevel } from '../../shared/floor/events.ts';
import { BURSTS } from './bursts.ts';

/** A burst's rhythm as a vibration: ms on, off, on, … beginning with on (W3C Vibration API). */
export function vibrationOf(burst: CallLevel): number[] {
  const tones = BURSTS[burst];
  return tones.flatMap((tone, index) => {
    const before = tones[index - 1];
    const onMs = Math.round(tone.lengthS * 1000);
    if (before === undefined) return [onMs];
    return [Math.round((tone.startS - before.startS - before.lengthS) * 1000), onMs];
  });
}
