import type { House } from '../../shared/documents/house.ts';

/** Units behind a field: symbols, the same in every language. */
export const UNITS = {
  litres: 'l',
  minutes: 'min',
  percent: '%',
  metres: 'm',
  grams: 'g',
  kilograms: 'kg',
  pounds: 'lb',
  ounces: 'oz',
  kelvin: 'K',
} as const;

export const TEMPERATURE_UNITS: Readonly<Record<House['units']['temperature'], string>> = { C: '°C', F: '°F' };
