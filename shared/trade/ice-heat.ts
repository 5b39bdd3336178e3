/** Specific heat of water, in kJ/(kg·K). */
export const WATER_KJ_PER_KG_K = 4.186;
/** Heat of fusion of ice, in kJ/kg. */
export const FUSION_KJ_PER_KG = 334;
/** Specific heat of ice, in kJ/(kg·K). */
export const ICE_KJ_PER_KG_K = 2.108;

/** Heat that a kilogram of ice takes up until it is water of 0 °C, in kJ; `iceC` is its own temperature, 0 or below. */
export function iceColdKJPerKg(iceC: number): number {
  return FUSION_KJ_PER_KG + ICE_KJ_PER_KG_K * Math.abs(iceC);
}
