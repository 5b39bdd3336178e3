import { additionG, madeG } from './amounts.ts';
import { wholeFormula, type BookLookup } from './book-lookup.ts';
import type { Formula } from './formula.ts';
import type { Fault } from './kitchen-faults.ts';
import type { Addition } from './method.ts';

/** Per cents at steps are rounded by hand, grams in parts too: by so much of what the parts have they may differ. */
const TOLERANCE = 0.05;

/**
 * An ingredient of the parts that goes in at steps of the method, late or held back, comes out of what the parts have of
 * it: the steps cannot add more. What goes on each piece comes on top.
 */
export function checkAdded(formula: Formula, path: string, lookup: BookLookup, fault: Fault): void {
  const formulaOf = (id: string): Formula | null => wholeFormula(lookup, id);
  const totalG = madeG(formula);
  const grams = (addition: Addition): number => additionG(addition, formula, totalG, null, formulaOf, lookup.ingredients).grams;
  const written = writtenIn(formula);
  const added = new Map<string, number>();
  formula.method.forEach((step, stepIndex) => {
    step.additions.forEach((addition, index) => {
      const id = addition.item;
      if (id === undefined || addition.gPerPiece !== undefined) return;
      const hasG = written.get(id) ?? 0;
      // Without being in the parts it comes on top, unless it is kept back of them.
      if (hasG === 0 && !addition.heldBack) return;
      const addedG = (added.get(id) ?? 0) + grams(addition);
      added.set(id, addedG);
      if (addedG > hasG * (1 + TOLERANCE) || hasG === 0)
        fault(`${path}.method[${stepIndex}].additions[${index}].${addition.pct === undefined ? 'item' : 'pct'}`, {
          code: 'addedTooMuch',
          id,
          hasG: tenth(hasG),
          addedG: tenth(addedG),
        });
    });
  });
}

function writtenIn(formula: Formula): ReadonlyMap<string, number> {
  const grams = new Map<string, number>();
  for (const line of formula.parts.flatMap((part) => part.items)) {
    if ('item' in line) grams.set(line.item, (grams.get(line.item) ?? 0) + line.g);
  }
  return grams;
}

function tenth(grams: number): number {
  return Math.round(grams * 10) / 10;
}
