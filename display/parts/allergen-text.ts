import type { Allergen } from '../../shared/documents/allergen.ts';
import { euListOf, usListOf, type Listed } from '../../shared/book/allergen-lists.ts';
import { EU_GROUP_NAMES, US_GROUP_NAMES } from '../words/allergen-groups.ts';
import { ALLERGEN_LIST } from '../words/allergens.ts';
import { ALLERGENS } from '../words/floor.ts';

/** Allergens by the European list: "cereals containing gluten (wheat, rye), milk"; says so where there is none. */
export function euText(allergens: readonly Allergen[]): string {
  return listText(euListOf(allergens), EU_GROUP_NAMES);
}

/** Allergens by the American list: "wheat, milk, tree nuts (almonds)"; says so where there is none. */
export function usText(allergens: readonly Allergen[]): string {
  return listText(usListOf(allergens), US_GROUP_NAMES);
}

function listText<Group extends string>(list: readonly Listed<Group>[], names: Readonly<Record<Group, string>>): string {
  if (list.length === 0) return ALLERGEN_LIST.none;
  return list
    .map(({ group, named }) =>
      named.length === 0 ? names[group] : `${names[group]} (${named.map((allergen) => ALLERGENS[allergen]).join(', ')})`,
    )
    .join(', ');
}
