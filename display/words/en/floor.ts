import type { Allergen } from '../../../shared/documents/allergen.ts';
import type { PutBackKind } from '../../../shared/documents/formula.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Allergens by the words of EU 1169/2011, Annex II. */
export const ALLERGENS: Readonly<Record<Allergen, string>> = {
  wheat: 'wheat',
  rye: 'rye',
  barley: 'barley',
  oats: 'oats',
  crustaceans: 'crustaceans',
  egg: 'egg',
  fish: 'fish',
  peanut: 'peanuts',
  soybean: 'soybeans',
  milk: 'milk',
  almond: 'almonds',
  hazelnut: 'hazelnuts',
  walnut: 'walnuts',
  cashew: 'cashews',
  pecan: 'pecan nuts',
  'brazil-nut': 'Brazil nuts',
  pistachio: 'pistachio nuts',
  macadamia: 'macadamia nuts',
  celery: 'celery',
  mustard: 'mustard',
  sesame: 'sesame',
  sulphites: 'sulphites',
  lupin: 'lupin',
  molluscs: 'molluscs',
};

/** Why something cannot be used, after its name. */
export const BLOCKED_WHY: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'is being cleaned',
  allergenChangeOver: 'is being cleaned of allergens',
  outOfOrder: 'is out of order',
};

/** What goes back into a dough. */
export const PUT_BACK: Readonly<Record<PutBackKind, string>> = {
  scrap: 'scrap dough',
  trim: 'trim',
  oldDough: 'old dough',
  oldBread: 'old bread',
};

/** What is no longer there. */
export const LOSSES: Readonly<Record<EventOf<'lossNamed'>['what'], string>> = {
  bake: 'Lost in baking',
  trim: 'Trim',
  seed: 'Seed thrown away',
  heldBack: 'Water not used',
  pieces: 'Pieces',
  spill: 'Spilt',
  cooking: 'Lost in cooking',
};

/** "a, b and c". */
export function listWords(items: readonly string[]): string {
  if (items.length <= 1) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}
