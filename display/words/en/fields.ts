import type { House } from '../../../shared/documents/house.ts';

/** Whose figures for holding and cooling the house goes by. */
export const RULE_SETS: Readonly<Record<House['ruleSet'], string>> = {
  'us-food-code': 'United States, Food Code',
  england: 'England',
  australia: 'Australia',
};

/** What a field that holds nothing says. */
export const NO_VALUE = 'none';

export const NUMBER_NEEDED = 'a number is needed';
export const WHOLE_NEEDED = 'a whole number is needed';
export const ONE_NEEDED = 'choose one at least';
export const TEXT_NEEDED = 'this cannot be empty';

export function rangeWords(least: number, most: number, unit: string): string {
  return `from ${least} to ${most}${unit === '' ? '' : ` ${unit}`}`;
}

/** In the head of a page at a desk. */
export function noLinkSinceWords(clock: string): string {
  return `NO LINK since ${clock}`;
}

export function paceAtDeskWords(pace: number): string {
  return `×${pace} · not a real day`;
}
