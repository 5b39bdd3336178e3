import type { Allergen } from '../../../shared/documents/allergen.ts';
import type { PutBackKind } from '../../../shared/documents/formula.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Allergens by the words of EU 1169/2011, Annex II; the French wording from memory. */
export const ALLERGENS: Readonly<Record<Allergen, string>> = {
  wheat: 'blé',
  rye: 'seigle',
  barley: 'orge',
  oats: 'avoine',
  crustaceans: 'crustacés',
  egg: 'œufs',
  fish: 'poissons',
  peanut: 'arachides',
  soybean: 'soja',
  milk: 'lait',
  almond: 'amandes',
  hazelnut: 'noisettes',
  walnut: 'noix',
  cashew: 'noix de cajou',
  pecan: 'noix de pécan',
  'brazil-nut': 'noix du Brésil',
  pistachio: 'pistaches',
  macadamia: 'noix de Macadamia',
  celery: 'céleri',
  mustard: 'moutarde',
  sesame: 'sésame',
  sulphites: 'sulfites',
  lupin: 'lupin',
  molluscs: 'mollusques',
};

/** Why something cannot be used, after its name; without a verb, so that it fits one thing and several. */
export const BLOCKED_WHY: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'en cours de nettoyage',
  allergenChangeOver: 'en cours de nettoyage (allergènes)',
  outOfOrder: 'en panne',
};

/** What goes back into a dough. */
export const PUT_BACK: Readonly<Record<PutBackKind, string>> = {
  scrap: 'chutes de pâte',
  trim: 'rognures',
  oldDough: 'pâte fermentée',
  oldBread: 'pain rassis',
};

/** What is no longer there. */
export const LOSSES: Readonly<Record<EventOf<'lossNamed'>['what'], string>> = {
  bake: 'Perte à la cuisson',
  trim: 'Rognures',
  seed: 'Chef jeté',
  heldBack: 'Bassinage non versé',
  pieces: 'Pièces',
  spill: 'Renversé',
  cooking: 'Perdu à la cuisson sur le feu',
};

/** "a, b et c". */
export function listWords(items: readonly string[]): string {
  if (items.length <= 1) return items.join('');
  return `${items.slice(0, -1).join(', ')} et ${items.at(-1) ?? ''}`;
}
