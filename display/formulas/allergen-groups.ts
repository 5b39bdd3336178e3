import { allergenSchema, type Allergen } from '../../shared/documents/allergen.ts';

/** Cereals containing gluten, point 1 of EU 1169/2011 Annex II, as our documents name them. */
export const CEREALS: readonly Allergen[] = ['wheat', 'rye', 'barley', 'oats'];
/** Nuts, point 8 of the same. */
export const NUTS: readonly Allergen[] = ['almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'brazil-nut', 'pistachio', 'macadamia'];
/** The other twelve points, in the regulation's order. */
export const OTHERS: readonly Allergen[] = allergenSchema.options.filter(
  (allergen) => !CEREALS.includes(allergen) && !NUTS.includes(allergen),
);

/** Allergens with one more or less, in the order in which all of them are listed. */
export function withAllergen(allergens: readonly Allergen[], allergen: Allergen, isIn: boolean): readonly Allergen[] {
  return allergenSchema.options.filter((known) => (known === allergen ? isIn : allergens.includes(known)));
}
