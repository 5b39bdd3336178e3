import { WATER_KJ_PER_KG_K, iceColdKJPerKg } from './ice-heat.ts';

/** Temperatures that are given beside the water's: flour, room, preferment. °C. */
export interface Given {
  readonly temperaturesC: readonly number[];
}

/**
 * The water's temperature, in °C, for a dough of `desiredDoughC` out of the mixer, where mixing warms it by `riseK`: the dough is the mean
 * of all its temperatures, plus the rise. May be far below freezing: that is what ice is for.
 */
export function requiredWaterC({
  desiredDoughC,
  temperaturesC,
  riseK,
}: Given & { readonly desiredDoughC: number; readonly riseK: number }): number {
  return requiredWaterByBaseC({ baseC: baseOf({ desiredDoughC, riseK }, temperaturesC.length + 1), temperaturesC });
}

/** The same with a friction factor in kelvin, subtracted once. */
export function requiredWaterByFrictionC({
  desiredDoughC,
  temperaturesC,
  frictionC,
}: Given & { readonly desiredDoughC: number; readonly frictionC: number }): number {
  return (temperaturesC.length + 1) * desiredDoughC - sum(temperaturesC) - frictionC;
}

/** The same from a base temperature: what all the temperatures, the water's included, are to add up to. °C. */
export function requiredWaterByBaseC({ baseC, temperaturesC }: Given & { readonly baseC: number }): number {
  return baseC - sum(temperaturesC);
}

/** By how much mixing warmed a dough, in kelvin. `waterC` is what the water counts as, its ice included. */
export function riseFromDough({ doughC, temperaturesC, waterC }: Given & { readonly doughC: number; readonly waterC: number }): number {
  return doughC - (sum(temperaturesC) + waterC) / (temperaturesC.length + 1);
}

/** A rise as a friction factor, in kelvin; `count` is the number of temperatures, the water's included. */
export function frictionOf(riseK: number, count: number): number {
  return riseK * count;
}

/** A friction factor, in kelvin, as a rise. */
export function riseOfFriction(frictionK: number, count: number): number {
  return frictionK / count;
}

/** A rise as the base temperature, in °C, of a dough; `count` is the number of temperatures, the water's included. */
export function baseOf({ desiredDoughC, riseK }: { readonly desiredDoughC: number; readonly riseK: number }, count: number): number {
  return count * (desiredDoughC - riseK);
}

/** A base temperature, in °C, as the rise that it stands for, in kelvin. */
export function riseOfBase({ desiredDoughC, baseC }: { readonly desiredDoughC: number; readonly baseC: number }, count: number): number {
  return desiredDoughC - baseC / count;
}

/** Water and ice of a recipe. `isReachable` is false where even all of the water as ice is not cold enough. Grams. */
export interface Ice {
  readonly iceG: number;
  readonly tapWaterG: number;
  readonly isReachable: boolean;
}

/**
 * How much of a recipe's water is taken as ice, so that all of it together counts as `requiredC`. No ice where the tap is cold
 * enough, or too cold: then it is warm water that is needed. `iceC` is the ice's own temperature, 0 or below.
 */
export function iceFor({
  waterG,
  tapC,
  requiredC,
  iceC = 0,
}: {
  readonly waterG: number;
  readonly tapC: number;
  readonly requiredC: number;
  readonly iceC?: number;
}): Ice {
  if (requiredC >= tapC) return { iceG: 0, tapWaterG: waterG, isReachable: true };
  if (requiredC < allIceC(iceC)) return { iceG: waterG, tapWaterG: 0, isReachable: false };
  const iceG = Math.min(waterG, (waterG * (tapC - requiredC)) / (tapC - allIceC(iceC)));
  return { iceG, tapWaterG: waterG - iceG, isReachable: true };
}

/** The temperature that water with ice in it counts as, in °C: what it would be if it stayed liquid with the same heat in it. */
export function countsAsC({
  waterG,
  iceG,
  tapC,
  iceC = 0,
}: {
  readonly waterG: number;
  readonly iceG: number;
  readonly tapC: number;
  readonly iceC?: number;
}): number {
  return waterG > 0 ? tapC - (iceG / waterG) * (tapC - allIceC(iceC)) : tapC;
}

/** What water that is all ice counts as, in °C: far below freezing, because melting takes the heat of cooling water by 80 kelvin. */
export function allIceC(iceC: number): number {
  return -iceColdKJPerKg(iceC) / WATER_KJ_PER_KG_K;
}

/**
 * The coldest that a dough comes out of the mixer, in °C, with all of its water as ice. Below freezing only in numbers: the ice
 * would not melt.
 */
export function coldestDoughC({ temperaturesC, riseK, iceC = 0 }: Given & { readonly riseK: number; readonly iceC?: number }): number {
  return (sum(temperaturesC) + allIceC(iceC)) / (temperaturesC.length + 1) + riseK;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
