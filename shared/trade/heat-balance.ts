import type { ItemKind } from './calc-part.ts';
import { WATER_KJ_PER_KG_K } from './ice-heat.ts';

/**
 * Specific heats by kind, in kJ/(kg·K). Flour, egg, dairy (whole milk) and fat (butter) from Geankoplis, Transport Processes, table A.4-1;
 * the others from memory: they are light in a dough, and this is a second opinion.
 */
export const SPECIFIC_HEAT_KJ_PER_KG_K: Readonly<Record<ItemKind, number>> = {
  flour: 1.8,
  water: WATER_KJ_PER_KG_K,
  salt: 0.87,
  yeast: 3.5,
  fat: 2.3,
  sugar: 1.24,
  egg: 3.18,
  dairy: 3.85,
  seed: 1.8,
  other: 2.5,
};

/** Heat that flour gives when it takes up water, in kJ/kg. A measured rise already contains it. */
export const HYDRATION_KJ_PER_KG = 15.1;

/** What goes into a dough beside its water. */
export interface HeatPart {
  readonly g: number;
  readonly kJPerKgK: number;
  readonly tempC: number;
}

export interface HeatInputs {
  readonly targetC: number;
  readonly parts: readonly HeatPart[];
  /** All water of the recipe, in grams, more than none; ice is part of it. */
  readonly waterG: number;
  /** By how much mixing warms parts and water alike, in kelvin. */
  readonly riseK: number;
  readonly flourG: number;
  /** 0 where the rise was measured: it contains the heat of hydration. */
  readonly hydrationKJPerKg: number;
}

/**
 * The water's temperature, in °C, at which a dough comes out at `targetC` by the balance of heat: what parts and water take up is
 * what the mixer and the wetting of the flour give.
 */
export function waterForBalanceC({ targetC, parts, waterG, riseK, flourG, hydrationKJPerKg }: HeatInputs): number {
  const beforeC = targetC - riseK;
  const takenKJ = parts.reduce((sum, { g, kJPerKgK, tempC }) => sum + (g / 1000) * kJPerKgK * (beforeC - tempC), 0);
  const givenKJ = (flourG / 1000) * hydrationKJPerKg;
  return beforeC + (takenKJ - givenKJ) / ((waterG / 1000) * WATER_KJ_PER_KG_K);
}

/** The dough's temperature out of the mixer, in °C, by the balance of heat; `waterC` is what the water counts as, its ice included. */
export function doughByBalanceC({ parts, waterG, riseK, flourG, hydrationKJPerKg }: Omit<HeatInputs, 'targetC'>, waterC: number): number {
  const all = [...parts, { g: waterG, kJPerKgK: WATER_KJ_PER_KG_K, tempC: waterC }];
  const capacity = all.reduce((sum, { g, kJPerKgK }) => sum + (g / 1000) * kJPerKgK, 0);
  const heat = all.reduce((sum, { g, kJPerKgK, tempC }) => sum + (g / 1000) * kJPerKgK * tempC, 0);
  return (heat + (flourG / 1000) * hydrationKJPerKg) / capacity + riseK;
}
