import { fromC } from '../../shared/trade/units.ts';

/** A temperature in the house's unit, whole degrees: "230 °C", "445 °F". */
export function temperatureText(celsius: number, unit: 'C' | 'F'): string {
  return `${Math.round(fromC(celsius, unit))} °${unit}`;
}
