import type { CallLevel } from '../../shared/floor/events.ts';

/** One tone of a burst. */
export interface Tone {
  /** From the burst's beginning to the tone's, in s. */
  readonly startS: number;
  readonly lengthS: number;
  /** The fundamental, in Hz. */
  readonly frequencyHz: number;
}

const CALL_S = 0.2;
const LOST_S = 0.12;
const LOST_RHYTHM_S = [0, 0.17, 0.34, 0.62, 0.79] as const;
/** The five come a second time after so long, in s: a longer gap than any within them, and all is over in 2.2 s. */
const LOST_AGAIN_S = 1.3;

/**
 * The three bursts. They differ by rhythm alone, so that a poor loudspeaker or a poor ear tells them apart: three rising,
 * four level, twice five. None is continuous, and none is three long ones with a pause (the evacuation signal of
 * ISO 8201).
 */
export const BURSTS: Readonly<Record<CallLevel, readonly Tone[]>> = {
  call: [
    { startS: 0, lengthS: CALL_S, frequencyHz: 660 },
    { startS: 0.3, lengthS: CALL_S, frequencyHz: 660 },
    { startS: 0.6, lengthS: CALL_S, frequencyHz: 880 },
  ],
  late: [0, 0.3, 0.6, 0.9].map((startS) => ({ startS, lengthS: CALL_S, frequencyHz: 660 })),
  lost: [0, LOST_AGAIN_S].flatMap((groupS) =>
    LOST_RHYTHM_S.map((startS) => ({ startS: groupS + startS, lengthS: LOST_S, frequencyHz: 740 })),
  ),
};

/** Amplitudes of the fundamental and its harmonics. */
export const HARMONICS = [1, 0.9, 0.8, 0.6, 0.35] as const;
/** No harmonic lies above: there small loudspeakers distort, and ears that are not young hear less. */
export const HIGHEST_HZ = 2500;
export const ATTACK_S = 0.015;
export const RELEASE_S = 0.03;

/** A partial of a tone, its amplitude as a share of the tone's. */
export interface Partial {
  readonly frequencyHz: number;
  readonly share: number;
}

/** The partials of a fundamental up to 2500 Hz; their shares add up to 1, so that no tone overdrives. */
export function partialsOf(frequencyHz: number): readonly Partial[] {
  const heard = HARMONICS.map((amplitude, index) => ({ frequencyHz: frequencyHz * (index + 1), amplitude })).filter(
    (partial) => partial.frequencyHz <= HIGHEST_HZ,
  );
  const sum = heard.reduce((total, partial) => total + partial.amplitude, 0);
  return heard.map((partial) => ({ frequencyHz: partial.frequencyHz, share: partial.amplitude / sum }));
}

/** How long a burst lasts, in s. */
export function burstLengthS(burst: CallLevel): number {
  return Math.max(...BURSTS[burst].map((tone) => tone.startS + tone.lengthS));
}
