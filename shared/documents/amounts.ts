import type { Allergen } from './allergen.ts';
import type { Formula, Ingredient, Part } from './formula.ts';
import type { Addition } from './method.ts';

/** Finds the formula that another one names; null where the books have none. */
export type FormulaOf = (id: string) => Formula | null;

/** Formulas that name one another deeper than this are taken for a circle; files with circles are refused. */
const MOST_DEPTH = 20;

/** What a formula makes as it is written, in grams: the sum of its last part. */
export function madeG(formula: Formula): number {
  return partG(formula.parts.at(-1));
}

function partG(part: Formula['parts'][number] | undefined): number {
  return (part?.items ?? []).reduce((sum, line) => sum + line.g, 0);
}

/** How much of a part is the pot's own seed, in grams. */
export function seedGIn(part: Part): number {
  return part.items.reduce((sum, line) => sum + ('seed' in line ? line.g : 0), 0);
}

/**
 * Grams of each ingredient in one gram of what the formula makes, parts and other formulas resolved. A formula that
 * the books lack counts as nothing. What was kept back of a pot is what the pot is made of, feed after feed: the shares
 * are those of everything else.
 */
export function sharesOf(formula: Formula, formulaOf: FormulaOf, depth = 0): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  if (depth > MOST_DEPTH) return shares;
  const byPart = new Map<string, ReadonlyMap<string, number>>();
  let last: ReadonlyMap<string, number> = shares;
  for (const part of formula.parts) {
    const grams = new Map<string, number>();
    const add = (id: string, g: number): void => void grams.set(id, (grams.get(id) ?? 0) + g);
    for (const line of part.items) {
      if ('item' in line) {
        add(line.item, line.g);
        continue;
      }
      if ('seed' in line) continue;
      const other = 'formula' in line ? formulaOf(line.formula) : null;
      const within = 'part' in line ? byPart.get(line.part) : other === null ? undefined : sharesOf(other, formulaOf, depth + 1);
      for (const [id, share] of within ?? []) add(id, share * line.g);
    }
    const totalG = partG(part) - seedGIn(part);
    last = new Map([...grams].map(([id, g]) => [id, totalG === 0 ? 0 : g / totalG]));
    byPart.set(part.name, last);
  }
  return last;
}

/** Grams of flour in one gram of what the formula makes, that in its preferments included: what baker's per cent refer to. */
export function flourShare(formula: Formula, formulaOf: FormulaOf, ingredients: readonly Ingredient[]): number {
  const flours = new Set(ingredients.filter((ingredient) => ingredient.kind === 'flour').map((ingredient) => ingredient.id));
  let share = 0;
  for (const [id, part] of sharesOf(formula, formulaOf)) if (flours.has(id)) share += part;
  return share;
}

/** Allergens in what a formula makes, as its ingredients declare them, sorted. */
export function allergensIn(formula: Formula, formulaOf: FormulaOf, ingredients: readonly Ingredient[]): readonly Allergen[] {
  const within = sharesOf(formula, formulaOf);
  const declared = ingredients.filter((ingredient) => within.has(ingredient.id)).flatMap((ingredient) => ingredient.allergens);
  return [...new Set(declared)].sort();
}

/** What a dough of so many grams and pieces takes of an addition, in grams, and whether that comes on top of its weight. */
export function additionG(
  addition: Addition,
  formula: Formula,
  grams: number,
  pieces: number | null,
  formulaOf: FormulaOf,
  ingredients: readonly Ingredient[],
): { readonly grams: number; readonly isExtra: boolean } {
  if (addition.gPerPiece !== undefined) return { grams: addition.gPerPiece * (pieces ?? 0), isExtra: true };
  if (addition.pct !== undefined)
    return { grams: (addition.pct / 100) * flourShare(formula, formulaOf, ingredients) * grams, isExtra: false };
  const lines = formula.parts.flatMap((part) => part.items);
  const writtenG = lines.reduce((sum, line) => sum + (names(line, addition) ? line.g : 0), 0);
  const totalG = madeG(formula);
  return { grams: totalG === 0 ? 0 : (writtenG * grams) / totalG, isExtra: false };
}

function names(line: Formula['parts'][number]['items'][number], addition: Addition): boolean {
  if ('item' in line) return addition.item === line.item;
  return 'formula' in line && addition.formula === line.formula;
}
