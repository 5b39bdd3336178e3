import type { CallLevel } from '../../shared/floor/events.ts';
import { ATTACK_S, BURSTS, partialsOf, RELEASE_S, type Tone } from './bursts.ts';
import { gainOf } from './loudness.ts';

/** Peak of a tone at full volume; the rest is headroom. */
const PEAK = 0.9;

/**
 * Puts a burst on an audio context's timeline, from `startS` of its clock on, as loud as `volumePct` says. Works on a live
 * context and on an offline one alike. Returns the source of the first tone: when that has ended, the burst has begun to
 * leave the context.
 */
export function scheduleBurst(context: BaseAudioContext, burst: CallLevel, startS: number, volumePct: number): AudioScheduledSourceNode {
  const peak = PEAK * gainOf(volumePct);
  const sources = BURSTS[burst].flatMap((tone) => scheduleTone(context, tone, startS, peak));
  const [first] = sources;
  if (first === undefined) throw new Error(`the burst ${burst} has no tone`);
  return first;
}

function scheduleTone(context: BaseAudioContext, tone: Tone, burstS: number, peak: number): OscillatorNode[] {
  const startS = burstS + tone.startS;
  const endS = startS + tone.lengthS;
  const envelope = context.createGain();
  envelope.gain.setValueAtTime(0, startS);
  envelope.gain.linearRampToValueAtTime(peak, startS + ATTACK_S);
  envelope.gain.setValueAtTime(peak, endS - RELEASE_S);
  envelope.gain.linearRampToValueAtTime(0, endS);
  envelope.connect(context.destination);
  return partialsOf(tone.frequencyHz).map((partial) => {
    const oscillator = context.createOscillator();
    oscillator.frequency.value = partial.frequencyHz;
    const share = context.createGain();
    share.gain.value = partial.share;
    oscillator.connect(share).connect(envelope);
    oscillator.start(startS);
    oscillator.stop(endS);
    return oscillator;
  });
}
