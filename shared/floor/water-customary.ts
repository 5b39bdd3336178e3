import type { House, WaterForm } from '../documents/house.ts';
import { fromC, fromK } from '../trade/units.ts';
import { baseOf, frictionOf } from '../trade/water-temperature.ts';
import type { WaterPlan } from './water-plan.ts';

/** The mixer's warming as a house speaks of it, in its unit: kelvins (or degrees Fahrenheit) of rise or friction, or a base temperature. */
export interface Customary {
  readonly form: WaterForm;
  readonly value: number;
  readonly unit: House['units']['temperature'];
}

/** The three customary forms of a plan's rise in the house's unit: one truth, said in three ways. */
export function customaryForms(
  plan: Pick<WaterPlan, 'rise' | 'doughC' | 'temperaturesC'>,
  unit: Customary['unit'],
): Readonly<Record<WaterForm, number>> {
  const count = plan.temperaturesC.length + 1;
  const { riseK } = plan.rise;
  const baseC = baseOf({ desiredDoughC: plan.doughC, riseK }, count);
  return {
    rise: fromK(riseK, unit),
    friction: fromK(frictionOf(riseK, count), unit),
    // A base is a sum of so many temperatures: each of them has Fahrenheit's 32 of its own.
    base: fromC(baseC / count, unit) * count,
  };
}

/** The form that the house has chosen. */
export function customaryOf(plan: Pick<WaterPlan, 'rise' | 'doughC' | 'temperaturesC'>, house: House): Customary {
  const unit = house.units.temperature;
  const { form } = house.water;
  return { form, value: customaryForms(plan, unit)[form], unit };
}
