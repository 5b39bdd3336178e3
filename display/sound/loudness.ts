/**
 * A sound is heard as half as loud when its level is 10 dB lower: the sone scale, which Stevens's power law leads to (sound
 * pressure to the power of 0.6). From memory; ISO 532 defines the scale.
 */
const HALF_AS_LOUD_DB = 10;

/**
 * The gain that makes a sound so many percent as loud as heard: 100 is 1, 50 is 0.316. Up to 100, so that what did not
 * overdrive does not then.
 */
export function gainOf(volumePct: number): number {
  const share = Math.min(1, Math.max(0, volumePct / 100));
  // −10 dB for each halving: 10^(10·log2(share)/20).
  return share ** ((HALF_AS_LOUD_DB / 20) * Math.log2(10));
}
