/** Amplitude, as a share of the peak, above which a tone has begun: early in its 15 ms of attack. */
const BEGUN = 0.02;
/** Silence that comes before an onset, in s: shorter than every gap of the bursts. */
const SILENCE_S = 0.02;

/** When tones begin, in s from the first sample: each first sound after a silence. */
export function onsetsS(samples: readonly number[], rateHz: number): number[] {
  const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const onsets: number[] = [];
  let quiet = SILENCE_S * rateHz;
  samples.forEach((sample, index) => {
    if (Math.abs(sample) <= BEGUN * peak) {
      quiet += 1;
      return;
    }
    if (quiet >= SILENCE_S * rateHz) onsets.push(index / rateHz);
    quiet = 0;
  });
  return onsets;
}

/** The share of the energy that lies from `fromHz` to `toHz`, by Parseval's theorem on a Fourier transform of all samples. */
export function energyShare(samples: readonly number[], rateHz: number, fromHz: number, toHz: number): number {
  const size = 2 ** Math.ceil(Math.log2(samples.length));
  const re = Float64Array.from({ length: size }, (_, index) => samples[index] ?? 0);
  const im = new Float64Array(size);
  transform(re, im);
  let within = 0;
  let all = 0;
  for (let bin = 0; bin <= size / 2; bin += 1) {
    const energy = (re[bin] ?? 0) ** 2 + (im[bin] ?? 0) ** 2;
    const hz = (bin * rateHz) / size;
    all += energy;
    if (hz >= fromHz && hz <= toHz) within += energy;
  }
  return within / all;
}

/** Cooley and Tukey's fast Fourier transform, in place, for a power of two. */
function transform(re: Float64Array, im: Float64Array): void {
  const size = re.length;
  for (let i = 1, j = 0; i < size; i += 1) {
    let bit = size >> 1;
    for (; (j & bit) !== 0; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i >= j) continue;
    [re[i], re[j]] = [re[j] ?? 0, re[i] ?? 0];
    [im[i], im[j]] = [im[j] ?? 0, im[i] ?? 0];
  }
  for (let length = 2; length <= size; length *= 2) {
    const step = (-2 * Math.PI) / length;
    for (let start = 0; start < size; start += length) {
      for (let k = 0; k < length / 2; k += 1) {
        const even = start + k;
        const odd = even + length / 2;
        const cos = Math.cos(step * k);
        const sin = Math.sin(step * k);
        const oddRe = (re[odd] ?? 0) * cos - (im[odd] ?? 0) * sin;
        const oddIm = (re[odd] ?? 0) * sin + (im[odd] ?? 0) * cos;
        re[odd] = (re[even] ?? 0) - oddRe;
        im[odd] = (im[even] ?? 0) - oddIm;
        re[even] = (re[even] ?? 0) + oddRe;
        im[even] = (im[even] ?? 0) + oddIm;
      }
    }
  }
}
