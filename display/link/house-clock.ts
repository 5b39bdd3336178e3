import {
  NO_OFFSET,
  STEP_MS,
  offsetMs,
  roundTripMs,
  withSample,
  type OffsetEstimate,
  type PingSample,
} from '../../shared/wire/clock-offset.ts';

/** House time = houseMs + pace · (real − realMs), `real` being the server's real time. */
export interface HouseAnchor {
  readonly houseMs: number;
  readonly realMs: number;
  readonly pace: number;
}

/**
 * What the page knows of the house's time: the server's anchor, and how far the server's real time is from the page's
 * monotonic clock. The page's wall clock has no part in it, so that one that is an hour wrong does no harm.
 */
export interface HouseClock {
  readonly anchor: HouseAnchor | null;
  readonly estimate: OffsetEstimate;
}

export const NO_CLOCK: HouseClock = { anchor: null, estimate: NO_OFFSET };

/** Takes in the server's anchor; a line other than the one held makes the samples taken under it worthless. */
export function withAnchor(clock: HouseClock, anchor: HouseAnchor): HouseClock {
  const isSameLine =
    clock.anchor !== null && clock.anchor.pace === anchor.pace && Math.abs(houseAtReal(clock.anchor, anchor.realMs) - anchor.houseMs) <= 1;
  return { anchor, estimate: isSameLine ? clock.estimate : { ...clock.estimate, samples: [] } };
}

/**
 * Takes in one ping's four times. Where it contradicts the estimate by more than both round trips can explain and by more than a
 * step, one of the clocks was set or stood still (sleep): what was sampled before is no longer about these clocks and goes.
 */
export function withPing(clock: HouseClock, sample: PingSample): HouseClock {
  const { estimate } = clock;
  const leastMs = estimate.samples.length === 0 ? 0 : Math.min(...estimate.samples.map(roundTripMs));
  // The true offset lies within half a round trip of what a sample says, either way.
  const explainedMs = (roundTripMs(sample) + leastMs) / 2 + STEP_MS;
  const contradicts = estimate.offsetMs !== null && Math.abs(offsetMs(sample) - estimate.offsetMs) > explainedMs;
  return { ...clock, estimate: withSample(contradicts ? { ...estimate, samples: [] } : estimate, sample) };
}

/** Forgets the samples, keeps the estimate: before a burst, so that the burst alone decides. */
export function withoutSamples(clock: HouseClock): HouseClock {
  return { ...clock, estimate: { ...clock.estimate, samples: [] } };
}

/** Whether the house's time can be told. */
export function isClockKnown(clock: HouseClock): boolean {
  return clock.anchor !== null && clock.estimate.offsetMs !== null;
}

/** House time (epoch ms, not rounded) at an instant of the page's monotonic clock; null before the first pong. */
export function houseAt(clock: HouseClock, monotonicMs: number): number | null {
  if (clock.anchor === null || clock.estimate.offsetMs === null) return null;
  return houseAtReal(clock.anchor, monotonicMs + clock.estimate.offsetMs);
}

function houseAtReal(anchor: HouseAnchor, realMs: number): number {
  return anchor.houseMs + anchor.pace * (realMs - anchor.realMs);
}

/** Tells the house's time so that a small correction never runs it backwards; one beyond a step is taken as it is. */
export class HouseClockReader {
  #lastMs = Number.NEGATIVE_INFINITY;

  /** House time at `monotonicMs`, or `fallbackMs` while it is not known. */
  read(clock: HouseClock, monotonicMs: number, fallbackMs: number): number {
    const houseMs = houseAt(clock, monotonicMs);
    if (houseMs === null) return fallbackMs;
    const stepMs = STEP_MS * (clock.anchor?.pace ?? 1);
    const heldBack = houseMs < this.#lastMs && this.#lastMs - houseMs <= stepMs;
    if (!heldBack) this.#lastMs = houseMs;
    return this.#lastMs;
  }
}
