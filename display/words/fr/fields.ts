import type { House } from '../../../shared/documents/house.ts';
import { decimalComma } from '../decimal-comma.ts';

/** Whose figures for holding and cooling the house goes by. */
export const RULE_SETS: Readonly<Record<House['ruleSet'], string>> = {
  'us-food-code': 'États-Unis, Food Code',
  england: 'Angleterre',
  australia: 'Australie',
};

/** What a field that holds nothing says. */
export const NO_VALUE = 'aucun';

export const NUMBER_NEEDED = 'il faut un nombre';
export const WHOLE_NEEDED = 'il faut un nombre entier';
export const ONE_NEEDED = 'en choisir au moins un';
export const TEXT_NEEDED = 'ne peut pas rester vide';

export function rangeWords(least: number, most: number, unit: string): string {
  return `de ${decimalComma(least)} à ${decimalComma(most)}${unit === '' ? '' : ` ${unit}`}`;
}

/** In the head of a page at a desk. */
export function noLinkSinceWords(clock: string): string {
  return `HORS LIGNE depuis ${clock}`;
}

export function paceAtDeskWords(pace: number): string {
  return `×${pace} · jour fictif`;
}
