import { allergensIn, type FormulaOf } from '../documents/amounts.ts';
import type { Allergen } from '../documents/allergen.ts';
import type { Formula } from '../documents/formula.ts';
import type { Lot } from './events.ts';
import { versionKey, type BroughtIn, type FloorState, type Workpiece } from './state.ts';

/** Lot numbers kept with one workpiece in the live state; the journal has them all. */
const LOTS_KEPT = 200;

/** The newest version of a formula that the house has; null where it has none. */
export function newestFormula(state: FloorState): FormulaOf {
  return (id) => state.formulas[versionKey(id, state.formulaVersions[id] ?? 0)] ?? null;
}

/** The formula of a workpiece, in the version it began with; null where the state no longer has it. */
export function formulaOf(state: FloorState, workpiece: Workpiece): Formula | null {
  return state.formulas[versionKey(workpiece.formulaId, workpiece.formulaVersion)] ?? null;
}

/** Allergens in a workpiece: those of its formula, and of whatever was drawn, added or put back into it. Sorted. */
export function allergensOf(state: FloorState, workpiece: Workpiece): readonly Allergen[] {
  const formula = formulaOf(state, workpiece);
  const written = formula === null ? [] : allergensIn(formula, newestFormula(state), state.ingredients?.document ?? []);
  return [...new Set([...written, ...workpiece.broughtIn.allergens])].sort();
}

/** What has come in, with more that comes. */
export function broughtWith(before: BroughtIn, allergens: readonly Allergen[], lotNumbers: readonly Lot[]): BroughtIn {
  const isKnown = (lot: Lot): boolean =>
    before.lotNumbers.some((known) => known.ingredientId === lot.ingredientId && known.lotNumber === lot.lotNumber);
  return {
    allergens: [...new Set([...before.allergens, ...allergens])].sort(),
    lotNumbers: [...before.lotNumbers, ...lotNumbers.filter((lot) => !isKnown(lot))].slice(-LOTS_KEPT),
  };
}
