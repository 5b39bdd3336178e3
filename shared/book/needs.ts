import type { FormulaOf } from '../documents/amounts.ts';
import { takenByFormula, takenByProduct } from '../documents/broken-by.ts';
import type { Formula, Product } from '../documents/formula.ts';

/**
 * Every formula that a formula and products of it take from, at any depth, as `formulaOf` has them: those first that are
 * taken first. Not the formula itself, nor what is not there.
 */
export function needsOf(formula: Formula, products: readonly Product[], formulaOf: FormulaOf): readonly Formula[] {
  const needs = new Map<string, Formula>();
  const waiting = [...takenByFormula(formula), ...products.flatMap(takenByProduct)];
  for (let id = waiting.shift(); id !== undefined; id = waiting.shift()) {
    if (id === formula.id || needs.has(id)) continue;
    const needed = formulaOf(id);
    if (needed === null) continue;
    needs.set(id, needed);
    waiting.push(...takenByFormula(needed));
  }
  return [...needs.values()];
}
