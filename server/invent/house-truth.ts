import type { Step } from '../../shared/documents/method.ts';
import { plannedMin } from '../../shared/floor/due.ts';
import type { Workpiece } from '../../shared/floor/state.ts';

/** What is true of this house and stands in none of its documents: what its records can teach it. */

/** Hands take longer than the method says, by formula and step. */
const HANDS_FACTOR: Readonly<Record<string, number>> = {
  'country turn-out': 1.6,
  'country divide': 1.6,
  'rye tin': 1.2,
  'milk-buns divide': 0.85,
};
/** A station that is slower than the methods think, and one that is quicker. */
const STATION_FACTOR: Readonly<Record<string, number>> = { fillings: 1.3, oven: 0.95 };
/** By how much a mixer warms a dough, in kelvin. */
const RISE_K: Readonly<Record<string, number>> = {
  'spiral country': 6,
  'spiral rye': 3,
  'planetary milk-buns': 6.5,
  'planetary olive-flatbread': 7.5,
  'planetary cheese-boats': 6,
};
const OTHER_RISE_K = 5;
/** The spiral warms more from week to week: its belt slips a little more. */
const SPIRAL_DRIFT_K_PER_DAY = 0.018;
/** Minutes of a bake in a slot, as a share of those at the reference: under 1 is hotter. */
const SLOT_SHARE: Readonly<Record<string, number>> = {
  'top-left': 0.93,
  'top-right': 0.99,
  'bottom-left': 1.01,
  'bottom-right': 1.03,
  back: 0.9,
  front: 1.02,
};
/** What bread loses more in a hot slot than its product says, of its weight. */
const HOT_LOSS_SHARE: Readonly<Record<string, number>> = { 'top-left': 0.012, back: 0.01 };

/** How long a step of hands really takes, in minutes, before its spread. */
export function handsMin(step: Step, workpiece: Workpiece): number {
  const own = HANDS_FACTOR[`${workpiece.formulaId} ${step.id}`] ?? 1;
  return plannedMin(step, workpiece) * own * (STATION_FACTOR[step.station ?? ''] ?? 1);
}

/** By how much a mixer warms a dough after so many days of the history, in kelvin. */
export function trueRiseK(mixerId: string, formulaId: string, day: number): number {
  const drift = mixerId === 'spiral' ? SPIRAL_DRIFT_K_PER_DAY * day : 0;
  return (RISE_K[`${mixerId} ${formulaId}`] ?? OTHER_RISE_K) + drift;
}

/** A bake's minutes in these slots as a share of those at the reference: the coolest ends last. */
export function bakeShare(slotIds: readonly string[]): number {
  return slotIds.length === 0 ? 1 : Math.max(...slotIds.map((slotId) => SLOT_SHARE[slotId] ?? 1));
}

/** What bread loses beyond its product's bake loss in these slots, of its weight. */
export function hotLossShare(slotIds: readonly string[]): number {
  return Math.max(0, ...slotIds.map((slotId) => HOT_LOSS_SHARE[slotId] ?? 0));
}
