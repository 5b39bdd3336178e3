import { driftedC, minutesUntilC, settlesAtC, type Drift } from './dough-drift.ts';
import type { RateCurve } from './ripeness-rate.ts';

/** Nodes of Gauss and Legendre's five points on −1 to 1, and their weights (from memory; a test holds them). */
const NODES: readonly (readonly [number, number])[] = [
  [-0.906179845938664, 0.23692688505618908],
  [-0.5384693101056831, 0.47862867049936647],
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
];
/**
 * After so many stretches a drift is cut into no more than as many again, however it goes: numbers that no bakehouse has must not make
 * it run for ever. Those of one that there is need some dozens.
 */
const FINE_STRETCHES = 1000;

/** The integral of a curve's rate along a drift, between two of its instants (minutes since it began), over which it is smooth. */
export function rateIntegral(drift: Drift, curve: RateCurve, fromMin: number, toMin: number): number {
  const half = (toMin - fromMin) / 2;
  const middle = fromMin + half;
  let sum = 0;
  for (const [node, weight] of NODES) sum += weight * curve.at(driftedC(drift, middle + half * node));
  return half * sum;
}

/**
 * Cuts a drift between two of its instants (minutes since it began) where the curve has knees, and finely enough that five points follow
 * the rate to about 1e-7 of it; visits the stretches in their order until `visit` says that it is enough. Whether it said so.
 */
export function visitStretches(
  drift: Drift,
  curve: RateCurve,
  fromMin: number,
  toMin: number,
  visit: (fromMin: number, toMin: number) => boolean,
): boolean {
  const kneesMin = kneesBetween(drift, curve, fromMin, toMin);
  const coarseMin = (toMin - fromMin) / FINE_STRETCHES;
  let [from, count] = [fromMin, 0];
  for (const kneeMin of [...kneesMin, toMin]) {
    while (from < kneeMin) {
      const widthMin = Math.max(count < FINE_STRETCHES ? 0 : coarseMin, smoothMin(drift, curve.smoothK, from));
      // What is left is taken along rather than left for a stretch of next to nothing.
      const to = from + widthMin * 1.25 >= kneeMin ? kneeMin : from + widthMin;
      if (visit(from, to)) return true;
      from = to;
      count += 1;
    }
  }
  return false;
}

function kneesBetween(drift: Drift, curve: RateCurve, fromMin: number, toMin: number): readonly number[] {
  const found: number[] = [];
  for (const kneeC of curve.kneesC) {
    const atMin = minutesUntilC(drift, kneeC);
    if (atMin !== null && atMin > fromMin && atMin < toMin) found.push(atMin);
  }
  return found.sort((a, b) => a - b);
}

/** For how many minutes from one of its instants on a drift is smooth enough: nothing changes much, or all of it is nearly gone. */
function smoothMin(drift: Drift, smoothK: number, fromMin: number): number {
  const endC = settlesAtC(drift);
  if (endC === null) return smoothK / Math.abs(drift.selfHeatKPerH / 60);
  const leftK = Math.abs(driftedC(drift, fromMin) - endC);
  if (leftK > smoothK) return drift.tauMin * Math.min(2, Math.log(leftK / (leftK - smoothK)));
  return drift.tauMin * (2 + 0.8 * Math.log(smoothK / leftK));
}
