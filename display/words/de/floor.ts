import type { Allergen } from '../../../shared/documents/allergen.ts';
import type { PutBackKind } from '../../../shared/documents/formula.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Allergens by the German words of EU 1169/2011, Annex II (from memory). */
export const ALLERGENS: Readonly<Record<Allergen, string>> = {
  wheat: 'Weizen',
  rye: 'Roggen',
  barley: 'Gerste',
  oats: 'Hafer',
  crustaceans: 'Krebstiere',
  egg: 'Eier',
  fish: 'Fische',
  peanut: 'Erdnüsse',
  soybean: 'Sojabohnen',
  milk: 'Milch',
  almond: 'Mandeln',
  hazelnut: 'Haselnüsse',
  walnut: 'Walnüsse',
  cashew: 'Kaschunüsse',
  pecan: 'Pecannüsse',
  'brazil-nut': 'Paranüsse',
  pistachio: 'Pistazien',
  macadamia: 'Macadamianüsse',
  celery: 'Sellerie',
  mustard: 'Senf',
  sesame: 'Sesamsamen',
  sulphites: 'Sulphite',
  lupin: 'Lupinen',
  molluscs: 'Weichtiere',
};

/** Why something cannot be used, after its name. */
export const BLOCKED_WHY: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'wird gereinigt',
  allergenChangeOver: 'wird von Allergenen gereinigt',
  outOfOrder: 'ist defekt',
};

/** What goes back into a dough. */
export const PUT_BACK: Readonly<Record<PutBackKind, string>> = {
  scrap: 'Restteig',
  trim: 'Abschnitte',
  oldDough: 'Altteig',
  oldBread: 'Altbrot',
};

/** What is no longer there. */
export const LOSSES: Readonly<Record<EventOf<'lossNamed'>['what'], string>> = {
  bake: 'Backverlust',
  trim: 'Abschnitte',
  seed: 'Anstellgut weggeworfen',
  heldBack: 'Wasser übrig',
  pieces: 'Stück',
  spill: 'Verschüttet',
  cooking: 'Beim Kochen verloren',
};

/** "a, b und c". */
export function listWords(items: readonly string[]): string {
  if (items.length <= 1) return items.join('');
  return `${items.slice(0, -1).join(', ')} und ${items.at(-1) ?? ''}`;
}
