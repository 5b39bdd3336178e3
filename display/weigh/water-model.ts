import { waterPlanOf, waterInputsOf, type WaterInputs, type WaterPlan } from '../../shared/floor/water-plan.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import type { KnownC } from '../../shared/floor/known-temperatures.ts';
import { customaryOf, type Customary } from '../../shared/floor/water-customary.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';

/** Water boils at 100 °C at sea level. */
const BOILS_C = 100;

/** What the water is reckoned from, in the order in which it is asked for. */
export const INPUTS = ['flour', 'room', 'preferment', 'tap'] as const;
export type InputWhere = (typeof INPUTS)[number];

/** The water of one dough as the screen shows it. */
export interface WaterModel {
  readonly inputs: WaterInputs;
  /** Whether a preferment counts. */
  readonly hasPreferment: boolean;
  /** Null while the flour's or the room's temperature is unknown. */
  readonly plan: WaterPlan | null;
  readonly customary: Customary | null;
  readonly mixer: TaughtMixer | null;
}

/** A mixer and how many doughs have taught something of it. */
export interface TaughtMixer {
  readonly id: string;
  readonly name: string;
  readonly ofFormula: number;
  readonly ofAll: number;
}

/** The water of a dough at an instant; null where its formula names no dough temperature, or nothing is poured into it. */
export function waterOf(state: FloorState, workpiece: Workpiece, nowMs: number): WaterModel | null {
  const inputs = waterInputsOf(state, workpiece, nowMs);
  const { flour, room, preferment, tap } = inputs;
  const known = {
    flourC: flour?.celsius ?? 0,
    roomC: room?.celsius ?? 0,
    prefermentC: preferment?.celsius ?? null,
    tapC: tap?.celsius ?? null,
  };
  const plan = waterPlanOf(state, workpiece, known);
  if (plan === null) return null;
  const house = state.house?.document;
  const isKnown = flour !== null && room !== null;
  return {
    inputs,
    hasPreferment: preferment !== null,
    plan: isKnown ? plan : null,
    customary: house === undefined || !isKnown ? null : customaryOf(plan, house),
    mixer: plan.mixerId === null ? null : taughtMixer(state, plan.mixerId, workpiece.formulaId),
  };
}

function taughtMixer(state: FloorState, mixerId: string, formulaId: string): TaughtMixer {
  const samples = state.rises[mixerId] ?? [];
  return {
    id: mixerId,
    name: state.kitchen?.document.mixers.find((mixer) => mixer.id === mixerId)?.name ?? mixerId,
    ofFormula: samples.filter((sample) => sample.formulaId === formulaId).length,
    ofAll: samples.length,
  };
}

/** The temperatures that are asked for: the preferment's only where it counts. */
export function inputsAsked(model: WaterModel): readonly InputWhere[] {
  return INPUTS.filter((where) => where !== 'preferment' || model.hasPreferment);
}

/** What is known of one temperature; null where nothing is. */
export function knownOf(model: WaterModel, where: InputWhere): KnownC | null {
  return model.inputs[where];
}

/**
 * What goes in as the plan says: all of the water, from the tap with ice in it where the tap is too warm, of the required
 * temperature where it is not. `saidC` is how warm it was before the ice, in °C,
 * where somebody measured it. Null while nothing can be reckoned, and where no mixer runs.
 */
export function takeWaterCommand(
  workpieceId: string,
  { plan, inputs }: WaterModel,
  saidC: number | null = null,
): CommandOf<'takeWater'> | null {
  const { flour, room, preferment, tap } = inputs;
  if (plan === null || plan.mixerId === null || flour === null || room === null) return null;
  const iceG = plan.ice?.iceG ?? 0;
  const waterC = saidC ?? (iceG > 0 && tap !== null ? tap.celsius : toTenth(plan.requiredC));
  // Beyond that it is no water: without the tap's temperature nobody knows how much ice it takes.
  if (waterC < 0 || waterC > BOILS_C) return null;
  return {
    type: 'takeWater',
    workpieceId,
    mixerId: plan.mixerId,
    waterC,
    waterG: plan.liquid.grams,
    iceG,
    flourC: flour.celsius,
    roomC: room.celsius,
    ...(preferment === null ? {} : { prefermentC: preferment.celsius }),
  };
}

/** How warm the water is before the ice: the tap's where there is ice, in °C; null while nothing can be reckoned. */
export function plainWaterC(model: WaterModel): number | null {
  return takeWaterCommand('', model)?.waterC ?? null;
}

function toTenth(celsius: number): number {
  return Math.round(celsius * 10) / 10;
}
