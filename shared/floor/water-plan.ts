import type { Formula } from '../documents/formula.ts';
import type { ExpectedRise } from '../trade/expected-rise.ts';
import { waterForBalanceC } from '../trade/heat-balance.ts';
import { WATER_KJ_PER_KG_K } from '../trade/ice-heat.ts';
import { roundedTo, scaleFor } from '../trade/rounding.ts';
import { countsAsC, iceFor, requiredWaterC } from '../trade/water-temperature.ts';
import { formulaOf } from './contents.ts';
import { countedC, expectedDoughC, iceCOf } from './dough-temperature.ts';
import { heatPartsOf, isPreferment, liquidOf, type Liquid } from './dough-heat.ts';
import { benchOf, prefermentOf, readOnFloor, type KnownC } from './known-temperatures.ts';
import { mixerFor, riseOf } from './rise.ts';
import type { FloorState, Workpiece } from './state.ts';
import { scalesOf, weighOutOf, type WeighPart } from './weigh-out.ts';

/** A preferment counts among the temperatures where it is more than so much of the dough's weight, per cent: our choice. */
export const PREFERMENT_COUNTS_PCT = 5;
/** From so many kelvin between a part and the room on, the balance of heat is asked as well: our choice. */
export const FAR_FROM_ROOM_K = 8;

/** Null where nobody knows; the preferment also where it does not count, or there is none. */
export interface WaterInputs {
  readonly flour: KnownC | null;
  readonly room: KnownC | null;
  readonly preferment: KnownC | null;
  readonly tap: KnownC | null;
}

/** Temperatures that a plan is made from, in °C; the preferment's is null where it does not count. */
export interface WaterTemperatures {
  readonly flourC: number;
  readonly roomC: number;
  readonly prefermentC: number | null;
  /** Null where nobody has said how warm the tap is: then nothing is said of ice. */
  readonly tapC: number | null;
}

/** Ice and tap water that make the water's weight together, in grams. `isReachable` is false where even this is not cold enough. */
export interface WaterWithIce {
  readonly iceG: number;
  readonly tapWaterG: number;
  readonly isReachable: boolean;
}

export interface WaterPlan {
  readonly mixerId: string | null;
  readonly rise: ExpectedRise;
  /** What the dough is to be after mixing, in °C. */
  readonly doughC: number;
  /** The temperatures that count, the water's left out: flour, room, and the preferment where it does. */
  readonly temperaturesC: readonly number[];
  readonly liquid: Liquid;
  /** May be far below freezing: that is what ice is for. */
  readonly requiredC: number;
  /** Null where nobody has said how warm the tap is, and for what is not water. */
  readonly ice: WaterWithIce | null;
  /** The coldest that the dough can become, in °C, where what is wanted cannot be reached. */
  readonly coldestDoughC: number | null;
  /** What the balance of heat would have the water be, in °C, where something is far from the room; with its own ice. */
  readonly balance: { readonly requiredC: number; readonly ice: WaterWithIce | null } | null;
}

/**
 * What is known at an instant of the temperatures that a dough's water is reckoned from: the newest readings of the last
 * hours on the whole floor, else the bench's for the room, else the room's for flour and preferment.
 */
export function waterInputsOf(state: FloorState, workpiece: Workpiece, nowMs: number): WaterInputs {
  const room = readOnFloor(state, 'room', nowMs) ?? benchOf(state);
  const asRoom: KnownC | null = room === null ? null : { celsius: room.celsius, from: 'room', atMs: null };
  return {
    flour: readOnFloor(state, 'flour', nowMs) ?? asRoom,
    room,
    preferment: isPrefermentCounted(state, workpiece) ? (prefermentOf(state, workpiece, nowMs) ?? asRoom) : null,
    tap: readOnFloor(state, 'tap', nowMs),
  };
}

/** The water for a dough, from these temperatures. Null where the formula says no temperature, or nothing is poured into it. */
export function waterPlanOf(state: FloorState, workpiece: Workpiece, temperatures: WaterTemperatures): WaterPlan | null {
  const formula = formulaOf(state, workpiece);
  const dough = weighOutOf(state, workpiece)?.parts.at(-1);
  const doughC = formula?.doughC;
  const liquid = dough === undefined ? null : liquidOf(state, dough);
  if (formula === null || dough === undefined || doughC === undefined || liquid === null) return null;
  const mixerId = mixerFor(state, workpiece);
  const rise = riseOf(state, mixerId, formula.id, workpiece.scaledToG);
  const temperaturesC = countedC(temperatures);
  const requiredC = requiredWaterC({ desiredDoughC: doughC, temperaturesC, riseK: rise.riseK });
  const { tapC } = temperatures;
  const ice = iceOf(state, liquid, tapC, requiredC);
  const balanceC = isFar(temperatures) ? balanceOf(state, formula, dough, liquid, temperatures, { doughC, riseK: rise.riseK }) : null;
  return {
    mixerId,
    rise,
    doughC,
    temperaturesC,
    liquid,
    requiredC,
    ice,
    coldestDoughC: ice === null || ice.isReachable || tapC === null ? null : coldestOf(state, liquid, ice, tapC, temperaturesC, rise.riseK),
    balance: balanceC === null ? null : { requiredC: balanceC, ice: iceOf(state, liquid, tapC, balanceC) },
  };
}

function isPrefermentCounted(state: FloorState, workpiece: Workpiece): boolean {
  const formula = formulaOf(state, workpiece);
  const dough = weighOutOf(state, workpiece)?.parts.at(-1);
  if (formula === null || dough === undefined) return false;
  const prefermentG = dough.lines.reduce((sum, line) => sum + (isPreferment(state, formula, line) ? line.grams : 0), 0);
  return prefermentG > (PREFERMENT_COUNTS_PCT / 100) * dough.totalG;
}

/** What is kept back at first is never ice: it may not be used. */
function iceOf(state: FloorState, liquid: Liquid, tapC: number | null, requiredC: number): WaterWithIce | null {
  if (tapC === null || !liquid.isWater) return null;
  const { iceG, isReachable } = iceFor({ waterG: liquid.grams, tapC, requiredC, iceC: iceCOf(state) });
  const mostG = liquid.grams - liquid.heldBackG;
  const scale = scaleFor(iceG, scalesOf(state));
  const roundedG = isReachable && iceG <= mostG ? Math.min(mostG, roundedTo(iceG, scale)) : mostG;
  return { iceG: roundedG, tapWaterG: liquid.grams - roundedG, isReachable: isReachable && iceG <= mostG };
}

function coldestOf(
  state: FloorState,
  liquid: Liquid,
  { iceG }: WaterWithIce,
  tapC: number,
  temperaturesC: readonly number[],
  riseK: number,
): number {
  return expectedDoughC(temperaturesC, countsAsC({ waterG: liquid.grams, iceG, tapC, iceC: iceCOf(state) }), riseK);
}

function isFar({ flourC, roomC, prefermentC }: WaterTemperatures): boolean {
  return [flourC, prefermentC ?? roomC].some((celsius) => Math.abs(celsius - roomC) > FAR_FROM_ROOM_K);
}

/** The rise was measured, or stands for one that was: it has the heat of wetting the flour in it. */
function balanceOf(
  state: FloorState,
  formula: Formula,
  dough: WeighPart,
  liquid: Liquid,
  temperatures: WaterTemperatures,
  { doughC, riseK }: { readonly doughC: number; readonly riseK: number },
): number {
  const parts = heatPartsOf(state, formula, dough, liquid, temperatures);
  // The balance knows water: milk takes the heat of a little less of it.
  const waterG = (liquid.grams * liquid.kJPerKgK) / WATER_KJ_PER_KG_K;
  return waterForBalanceC({ targetC: doughC, parts, waterG, riseK, flourG: 0, hydrationKJPerKg: 0 });
}
