import { cardinalShare } from './cardinal-rate.ts';
import { monotoneCubic, type CurvePoint } from './monotone-cubic.ts';
import { BAKERS_YEAST_C, type Cardinals } from './rate-model.ts';

/**
 * Growth of a levain's yeast as a share of its best (y) at temperatures in °C (x): best at 27 to 28, half at 20 and 32, a quarter at 14,
 * none at 35 (Gänzle, Ehmann & Hammes 1998, Appl. Environ. Microbiol. 64:2616; the points from Gänzle's own table in the FAQ of
 * rec.food.sourdough).
 */
export const LEVAIN_POINTS: readonly CurvePoint[] = [
  { x: 14, y: 0.25 },
  { x: 20, y: 0.5 },
  { x: 27.5, y: 1 },
  { x: 32, y: 0.5 },
  { x: 35, y: 0 },
];
/** Below this the points end, in °C. */
export const LEVAIN_COLD_C = 14;
/** Above this its yeast does not grow, in °C. */
export const LEVAIN_MOST_C = 35;
/**
 * The shape of the cold end, joined at 14 °C. The table says no growth at 8 °C, but dough in a retarder goes on gassing slowly (a 12 h and
 * a 40 h retard differ, common practice): hence the baker's yeast's least temperature.
 */
const COLD_SHAPE_C: Cardinals = BAKERS_YEAST_C;

/** Lactobacilli of the levain, which sour it: best at 32 to 33 °C, half at 20 and 37, a quarter at 15 and 39, none at 4 and 41 (same table). */
export const LACTOBACILLI_POINTS: readonly CurvePoint[] = [
  { x: 4, y: 0 },
  { x: 15, y: 0.25 },
  { x: 20, y: 0.5 },
  { x: 32.5, y: 1 },
  { x: 37, y: 0.5 },
  { x: 39, y: 0.25 },
  { x: 41, y: 0 },
];

const warmShare = monotoneCubic(LEVAIN_POINTS);
const souringShare = monotoneCubic(LACTOBACILLI_POINTS);
const COLD_SCALE = warmShare(LEVAIN_COLD_C) / cardinalShare(LEVAIN_COLD_C, COLD_SHAPE_C);

/** Growth of a levain's yeast at a temperature as a share of its best, 0 to 1; 0 outside 2.8 to 35 °C. */
export function levainShare(doughC: number): number {
  if (doughC >= LEVAIN_MOST_C) return 0;
  return doughC < LEVAIN_COLD_C ? COLD_SCALE * cardinalShare(doughC, COLD_SHAPE_C) : warmShare(doughC);
}

/** Growth of a levain's lactobacilli at a temperature as a share of their best, 0 to 1; 0 outside 4 to 41 °C. */
export function lactobacilliShare(doughC: number): number {
  return doughC <= 4 || doughC >= 41 ? 0 : souringShare(doughC);
}
