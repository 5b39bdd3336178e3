import type { EventOf } from '../../../shared/floor/events.ts';
import { decimalComma } from '../decimal-comma.ts';

/** A number as it is read: at most one decimal, a true minus. */
export function numberWords(value: number): string {
  return decimalComma(Math.round(value * 10) / 10).replace('-', '−');
}

/** What the panels say with which numbers are told: temperatures, minutes, what goes in on top. */
export const NUMBERS = {
  // The stepper and its chips.
  outOfRange: (typed: string, least: string, most: string): string => `${typed} ne va pas\u00a0: de ${least} à ${most}.`,
  notANumber: (typed: string): string => `«\u00a0${typed}\u00a0» n’est pas un nombre.`,
  another: 'Autre…',
  goAhead: 'Partent devant, en fournée à part',
  // Temperatures.
  temperature: 'Température…',
  temperatureTitle: (tag: string): string => `${tag}\u00a0: combien de degrés\u202f?`,
  wanted: (reading: string): string => `visé ${reading}`,
  lastRead: (reading: string, clock: string): string => `relevé ${reading} à ${clock}`,
  reads: (reading: string): string => `Relevé ${reading}`,
  readings: 'Températures',
  coreCaution:
    'Mesurer au plus épais, sonde propre. La valeur est celle de la recette\u00a0: la réglementation locale et votre propre conseil agréé passent d’abord.',
  // Minutes.
  minutes: 'Autre durée…',
  minutesTitle: (tag: string): string => `${tag}\u00a0: combien de minutes\u202f?`,
  minutesLabel: 'Minutes',
  giveMinutes: (minutes: number): string => `+${minutes} min de plus`,
  holdMinutes: (minutes: number): string => `Retenir ${minutes} min`,
  // What goes in on top.
  add: 'Ajouter…',
  addTitle: (tag: string): string => `Qu’est-ce qui est entré en plus dans ${tag}\u202f?`,
  addAmount: (tag: string, name: string): string => `${name} dans ${tag}, en plus`,
  inFormula: (grams: string): string => `recette ${grams}`,
  otherIngredients: 'Hors recette',
  addDo: (grams: string): string => `Ajouter ${grams}`,
  lot: 'Numéro de lot',
  lotOnly: 'Rien en plus\u00a0: noter le numéro de lot',
  brings: (allergens: string): string =>
    `Apporte ${allergens}, absent de la recette\u00a0: allergènes. L’étiquette et l’information des clients changent avec\u202f; la réglementation locale et votre propre conseil agréé passent d’abord.`,
} as const;

/** What a temperature was read of. */
export const READ_WHERE: Readonly<Record<EventOf<'temperatureRead'>['where'], string>> = {
  dough: 'Pâte',
  core: 'À cœur',
  water: 'Eau',
  filling: 'Garniture',
  room: 'Fournil',
  flour: 'Farine',
  tap: 'Robinet',
  preferment: 'Préferment',
};
