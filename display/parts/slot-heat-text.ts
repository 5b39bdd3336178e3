import type { SlotHeat } from '../../shared/trade/slot-heat.ts';
import { OVENS } from '../words/ovens.ts';

/** Below this many per cent a slot is as its deck is set: no baker bakes to it. */
const LEAST_PERCENT = 2;
/** A range of the factor narrower than these is fairly sure, and sure. Our choice. */
const FAIRLY_WITHIN = 0.2;
const SURE_WITHIN = 0.1;

/** How hot a slot is, in a few words: "8 % quicker". */
export function slotHeatText({ factor, count }: SlotHeat): string {
  if (count === 0) return OVENS.unknown;
  const percent = Math.round((factor - 1) * 100);
  if (Math.abs(percent) < LEAST_PERCENT) return OVENS.asSet;
  return percent < 0 ? OVENS.quicker(-percent) : OVENS.slower(percent);
}

/** How sure that is, in words; empty where nothing is known. */
export function slotSureText({ between }: SlotHeat): string {
  if (between === null) return '';
  const width = between.most - between.least;
  return OVENS.sure[width < SURE_WITHIN ? 2 : width < FAIRLY_WITHIN ? 1 : 0] ?? '';
}
