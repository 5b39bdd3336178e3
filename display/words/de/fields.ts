import type { House } from '../../../shared/documents/house.ts';
import { decimalComma } from '../decimal-comma.ts';

/** Whose figures for holding and cooling the house goes by. */
export const RULE_SETS: Readonly<Record<House['ruleSet'], string>> = {
  'us-food-code': 'Vereinigte Staaten, Food Code',
  england: 'England',
  australia: 'Australien',
};

/** What a field that holds nothing says. */
export const NO_VALUE = 'ohne';

export const NUMBER_NEEDED = 'hier gehört eine Zahl hin';
export const WHOLE_NEEDED = 'hier gehört eine ganze Zahl hin';
export const ONE_NEEDED = 'mindestens eines auswählen';
export const TEXT_NEEDED = 'darf nicht leer sein';

export function rangeWords(least: number, most: number, unit: string): string {
  return `von ${decimalComma(least)} bis ${decimalComma(most)}${unit === '' ? '' : ` ${unit}`}`;
}

/** In the head of a page at a desk. */
export function noLinkSinceWords(clock: string): string {
  return `KEINE VERBINDUNG seit ${clock}`;
}

export function paceAtDeskWords(pace: number): string {
  return `×${pace} · kein echter Tag`;
}
