/** A temperature in the house's unit, whole degrees: "230 °C", "445 °F". */
export function temperatureText(celsius: number, unit: 'C' | 'F'): string {
  const degrees = unit === 'C' ? celsius : (celsius * 9) / 5 + 32;
  return `${Math.round(degrees)} °${unit}`;
}
