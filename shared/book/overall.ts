import type { FormulaOf } from '../documents/amounts.ts';
import type { Formula, Ingredient } from '../documents/formula.ts';
import { accepted, refused, type Result } from '../result.ts';
import { isPartTaken, type CalcFault, type CalcPart } from '../trade/calc-part.ts';
import { sumsOf, type CalcScale, type DoughSums } from '../trade/formula-totals.ts';
import { calcPartsOf } from './calc-parts.ts';

export { calcPartsOf } from './calc-parts.ts';

/** An ingredient in all of a dough, preferments included: grams, and per cent of all flour (null where there is none). */
export interface OverallIngredient {
  readonly ingredientId: string;
  readonly g: number;
  readonly pct: number | null;
}

/** A formula's sums with everything that it takes of other formulas: theirs stand among `parts`, by their names. */
export interface Overall extends DoughSums {
  /** In the order in which the dough lists them, and then what it takes. */
  readonly byIngredient: readonly OverallIngredient[];
}

/**
 * The overall formula, as written or scaled. Percentages are null where there is no flour (fillings). Refused where it cannot be
 * reckoned: something missing (at its line), or parts that are in one another (at `parts`).
 */
export function overallOf(
  formula: Formula,
  formulaOf: FormulaOf,
  ingredients: readonly Ingredient[],
  scale?: CalcScale,
): Result<Overall, CalcFault> {
  const parts = calcPartsOf(formula, formulaOf, ingredients);
  if (!parts.ok) return parts;
  const sums = sumsOf(parts.value, scale);
  // Its field would count the parts that other formulas brought with them.
  if (!sums.ok) return refused({ ...sums.fault, field: 'parts' });
  return accepted({ ...sums.value, byIngredient: byIngredient(parts.value, sums.value) });
}

function byIngredient(parts: readonly CalcPart[], sums: DoughSums): readonly OverallIngredient[] {
  const grams = new Map<string, number>();
  for (const index of [...parts.keys()].reverse()) {
    for (const [line, item] of (parts[index]?.items ?? []).entries()) {
      if (isPartTaken(item)) continue;
      const g = sums.parts[index]?.items[line]?.g ?? 0;
      grams.set(item.item, (grams.get(item.item) ?? 0) + g);
    }
  }
  const { flourG } = sums;
  return [...grams].map(([ingredientId, g]) => ({ ingredientId, g, pct: flourG > 0 ? (g / flourG) * 100 : null }));
}
