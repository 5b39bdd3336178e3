/** One exchange of a ping: t1 and t4 by the client's clock, t2 and t3 by the server's, all in milliseconds. */
export interface PingSample {
  readonly t1: number;
  readonly t2: number;
  readonly t3: number;
  readonly t4: number;
}

/** Samples from which the best is taken (RFC 5905 section 10, the clock filter's eight stages). */
export const FILTER_STAGES = 8;
/** An offset change beyond this is stepped, a smaller one slewed. */
export const STEP_MS = 250;
/** How much of a small correction is taken up at each sample. */
export const SLEW_SHARE = 0.25;

/** Offset of the server's clock against the client's: ((t2 − t1) + (t3 − t4)) / 2 (RFC 5905 section 8). */
export function offsetMs(sample: PingSample): number {
  return (sample.t2 - sample.t1 + (sample.t3 - sample.t4)) / 2;
}

/** Round trip without the server's own time: (t4 − t1) − (t3 − t2) (RFC 5905 section 8). */
export function roundTripMs(sample: PingSample): number {
  return sample.t4 - sample.t1 - (sample.t3 - sample.t2);
}

export interface OffsetEstimate {
  readonly samples: readonly PingSample[];
  readonly offsetMs: number | null;
}

export const NO_OFFSET: OffsetEstimate = { samples: [], offsetMs: null };

/** Takes in a sample: keeps the last eight, believes the one with the least round trip, steps large changes and slews small ones. */
export function withSample(estimate: OffsetEstimate, sample: PingSample): OffsetEstimate {
  const samples = [...estimate.samples, sample].slice(-FILTER_STAGES);
  const best = samples.reduce((a, b) => (roundTripMs(b) < roundTripMs(a) ? b : a));
  const wanted = offsetMs(best);
  if (estimate.offsetMs === null) return { samples, offsetMs: wanted };
  const change = wanted - estimate.offsetMs;
  const step = Math.abs(change) > STEP_MS ? change : change * SLEW_SHARE;
  return { samples, offsetMs: estimate.offsetMs + step };
}
