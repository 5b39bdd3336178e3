import { additionG } from '../../shared/documents/amounts.ts';
import type { Allergen } from '../../shared/documents/allergen.ts';
import type { Ingredient } from '../../shared/documents/formula.ts';
import type { House } from '../../shared/documents/house.ts';
import { allergensOf, formulaOf, newestFormula } from '../../shared/floor/contents.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { fromG, toG } from '../../shared/trade/units.ts';

/** An ingredient that may have gone in on top. */
export interface AddChoice {
  readonly ingredientId: string;
  readonly name: string;
  /** What the formula takes of it for this dough, in grams; null where it takes none. */
  readonly formulaG: number | null;
}

/** Everything that can be added: what the step takes first, then the rest of the formula, then the rest of the house. */
export function addChoices(state: FloorState, workpiece: Workpiece, stepItems: readonly string[]): readonly AddChoice[] {
  const choices = (state.ingredients?.document ?? []).map((ingredient) => choiceOf(state, workpiece, ingredient));
  const rank = ({ ingredientId, formulaG }: AddChoice): number => (stepItems.includes(ingredientId) ? 0 : formulaG === null ? 2 : 1);
  return [...choices].sort((a, b) => rank(a) - rank(b));
}

function choiceOf(state: FloorState, workpiece: Workpiece, { id, name }: Ingredient): AddChoice {
  const formula = formulaOf(state, workpiece);
  const addition = { item: id, heldBack: false };
  const grams =
    formula === null
      ? 0
      : additionG(addition, formula, workpiece.grams, workpiece.pieces, newestFormula(state), state.ingredients?.document ?? []).grams;
  return { ingredientId: id, name, formulaG: grams > 0 ? grams : null };
}

/** Shares of what the formula takes that a baker adds by eye: from a splash to a tenth. Common practice. */
const SHARES = [0.005, 0.01, 0.02, 0.05, 0.1] as const;
/** Amounts offered where the formula takes none, in grams and in ounces. */
const USUAL_G = [10, 20, 50, 100, 200] as const;
const USUAL_OZ = [0.5, 1, 2, 4, 8] as const;

/** Amounts on top that one touch says, in grams, rising, none twice. */
export function amountsOnTop(formulaG: number | null, units: House['units']): readonly number[] {
  if (units.weight === 'lb') return ouncesOnTop(formulaG).map((oz) => toG(oz, 'oz'));
  if (formulaG === null) return USUAL_G;
  return [...new Set(SHARES.map((share) => roundG(share * formulaG)))].filter((grams) => grams > 0);
}

function ouncesOnTop(formulaG: number | null): readonly number[] {
  if (formulaG === null) return USUAL_OZ;
  return [...new Set(SHARES.map((share) => roundOz(fromG(share * formulaG, 'oz'))))];
}

/** To what an ounce scale and an eye tell apart: 0.1 oz below half an ounce, 0.5 below 4, 1 below 16, 2 above. */
function roundOz(oz: number): number {
  const toOz = oz < 0.5 ? 0.1 : oz < 4 ? 0.5 : oz < 16 ? 1 : 2;
  return Math.max(0.1, Math.round(Math.round(oz / toOz) * toOz * 10) / 10);
}

/** To what a baker's scale and eye tell apart: 1 g below 10 g, 5 g below 100 g, 10 g below 500 g, 50 g above. */
function roundG(grams: number): number {
  const toG = grams < 10 ? 1 : grams < 100 ? 5 : grams < 500 ? 10 : 50;
  return Math.max(1, Math.round(grams / toG) * toG);
}

/** Lot numbers of an ingredient that the floor has seen, this dough's own first, the newest first; at most so many. */
export function lotsOf(state: FloorState, workpiece: Workpiece, ingredientId: string, most: number): readonly string[] {
  const others = Object.values(state.workpieces).filter((other) => other.id !== workpiece.id);
  const lots = [workpiece, ...others].flatMap((piece) => [...piece.broughtIn.lotNumbers].reverse());
  return [...new Set(lots.filter((lot) => lot.ingredientId === ingredientId).map((lot) => lot.lotNumber))].slice(0, most);
}

/** Allergens that an ingredient would bring in and that are not in the dough yet. */
export function newAllergens(state: FloorState, workpiece: Workpiece, ingredientId: string): readonly Allergen[] {
  const ingredient = state.ingredients?.document.find((candidate) => candidate.id === ingredientId);
  const within = allergensOf(state, workpiece);
  return (ingredient?.allergens ?? []).filter((allergen) => !within.includes(allergen));
}

/** Whether anything can still go into it or onto it: not once it has been in the oven. */
export function canTakeIn(workpiece: Workpiece): boolean {
  return workpiece.slotIds.length === 0;
}
