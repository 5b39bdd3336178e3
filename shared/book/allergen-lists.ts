import type { Allergen } from '../documents/allergen.ts';
import { EU_GROUPS, euGroupOf, inOrder, US_GROUPS, usGroupOf, type EuGroup, type UsGroup } from './allergen-groups.ts';

/** A group of a list that something contains, with the cereals or nuts by their names where the group has several. */
export interface Listed<Group> {
  readonly group: Group;
  /** In the order of the schema; empty where the group's own name says it all. */
  readonly named: readonly Allergen[];
}

/** Allergens by the fourteen groups, the cereals and nuts named. */
export function euListOf(allergens: readonly Allergen[]): readonly Listed<EuGroup>[] {
  return listed(allergens, EU_GROUPS, euGroupOf, ['gluten', 'nuts']);
}

/** Allergens by the American nine, the tree nuts named; what is on that list alone. */
export function usListOf(allergens: readonly Allergen[]): readonly Listed<UsGroup>[] {
  return listed(allergens, US_GROUPS, usGroupOf, ['treeNuts']);
}

function listed<Group extends string>(
  allergens: readonly Allergen[],
  groups: readonly Group[],
  groupOf: (allergen: Allergen) => Group | null,
  named: readonly Group[],
): readonly Listed<Group>[] {
  const sorted = inOrder(allergens);
  return groups.flatMap((group) => {
    const members = sorted.filter((allergen) => groupOf(allergen) === group);
    return members.length === 0 ? [] : [{ group, named: named.includes(group) ? members : [] }];
  });
}
