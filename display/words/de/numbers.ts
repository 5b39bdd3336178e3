import type { EventOf } from '../../../shared/floor/events.ts';
import { decimalComma } from '../decimal-comma.ts';

/** A number as it is read: at most one decimal, a true minus. */
export function numberWords(value: number): string {
  return decimalComma(Math.round(value * 10) / 10).replace('-', '−');
}

/** What the panels say with which numbers are told: temperatures, minutes, what goes in on top. */
export const NUMBERS = {
  // The stepper and its chips.
  outOfRange: (typed: string, least: string, most: string): string => `${typed} geht nicht: von ${least} bis ${most}.`,
  notANumber: (typed: string): string => `„${typed}“ ist keine Zahl.`,
  another: 'Andere…',
  goAhead: 'Gehen schon weiter, als eigener Einschuss',
  // Temperatures.
  temperature: 'Temperatur…',
  temperatureTitle: (tag: string): string => `${tag}: wie viel Grad?`,
  wanted: (reading: string): string => `Soll ${reading}`,
  lastRead: (reading: string, clock: string): string => `zuletzt ${reading} um ${clock}`,
  reads: (reading: string): string => `Es sind ${reading}`,
  readings: 'Temperaturen',
  coreCaution:
    'An der dicksten Stelle messen, mit sauberem Fühler. Der Wert steht so im Rezept: Ihre örtlichen Vorschriften und Ihre eigene fachliche Beratung gehen vor.',
  // Minutes.
  minutes: 'Andere Zeit…',
  minutesTitle: (tag: string): string => `${tag}: wie viele Minuten?`,
  minutesLabel: 'Minuten',
  giveMinutes: (minutes: number): string => `+${minutes} min mehr`,
  holdMinutes: (minutes: number): string => `${minutes} min anhalten`,
  // What goes in on top.
  add: 'Zugeben…',
  addTitle: (tag: string): string => `Was kam noch in ${tag}?`,
  addAmount: (tag: string, name: string): string => `${name} in ${tag}, zusätzlich`,
  inFormula: (grams: string): string => `Rezept ${grams}`,
  otherIngredients: 'Nicht im Rezept',
  addDo: (grams: string): string => `${grams} zugeben`,
  lot: 'Chargennummer',
  lotOnly: 'Nichts dazu: nur Chargennummer notieren',
  brings: (allergens: string): string =>
    `Bringt ${allergens} mit, was das Rezept nicht hat: Allergene. Etikett und Auskunft ändern sich damit; örtliche Vorschriften und Ihre eigene fachliche Beratung gehen vor.`,
} as const;

/** What a temperature was read of. */
export const READ_WHERE: Readonly<Record<EventOf<'temperatureRead'>['where'], string>> = {
  dough: 'Teig',
  core: 'Kern',
  water: 'Wasser',
  filling: 'Füllung',
  room: 'Raum',
  flour: 'Mehl',
  tap: 'Leitung',
  preferment: 'Vorteig',
};
