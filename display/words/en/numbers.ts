import type { EventOf } from '../../../shared/floor/events.ts';

/** A number as it is read: at most one decimal, a true minus. */
export function numberWords(value: number): string {
  return String(Math.round(value * 10) / 10).replace('-', '−');
}

/** What the panels say with which numbers are told: temperatures, minutes, what goes in on top. */
export const NUMBERS = {
  // The stepper and its chips.
  outOfRange: (typed: string, least: string, most: string): string => `${typed} will not do: from ${least} to ${most}.`,
  notANumber: (typed: string): string => `“${typed}” is no number.`,
  another: 'Another…',
  goAhead: 'Go on ahead, as a load of their own',
  // Temperatures.
  temperature: 'Temperature…',
  temperatureTitle: (tag: string): string => `${tag}: what does it read?`,
  wanted: (reading: string): string => `wanted ${reading}`,
  lastRead: (reading: string, clock: string): string => `last ${reading} at ${clock}`,
  reads: (reading: string): string => `It reads ${reading}`,
  readings: 'Temperatures',
  coreCaution:
    'Measure in the thickest part, with a clean probe. The figure is the method’s own: your local food code and your own licensed advice come first.',
  // Minutes.
  minutes: 'Other minutes…',
  minutesTitle: (tag: string): string => `${tag}: how many minutes?`,
  minutesLabel: 'Minutes',
  giveMinutes: (minutes: number): string => `+${minutes} min more`,
  holdMinutes: (minutes: number): string => `Hold ${minutes} min`,
  // What goes in on top.
  add: 'Add…',
  addTitle: (tag: string): string => `What went into ${tag} on top?`,
  addAmount: (tag: string, name: string): string => `${name} into ${tag}, on top`,
  inFormula: (grams: string): string => `formula ${grams}`,
  otherIngredients: 'Not in its formula',
  addDo: (grams: string): string => `Add ${grams}`,
  lot: 'Lot number',
  lotOnly: 'Nothing on top: note the lot number',
  brings: (allergens: string): string =>
    `Brings ${allergens}, which its formula has not: allergens. What the label and the guests are told changes with it; local codes and your own licensed advice come first.`,
} as const;

/** What a temperature was read of. */
export const READ_WHERE: Readonly<Record<EventOf<'temperatureRead'>['where'], string>> = {
  dough: 'Dough',
  core: 'Core',
  water: 'Water',
  filling: 'Filling',
  room: 'Room',
  flour: 'Flour',
  tap: 'Tap',
  preferment: 'Preferment',
};
