import { allergensOfFacts, productAllergens } from '../../book/allergens.ts';
import type { Allergen } from '../../documents/allergen.ts';
import { additionG, allergensIn, type FormulaOf } from '../../documents/amounts.ts';
import type { Formula, Ingredient, Product } from '../../documents/formula.ts';
import type { Kitchen } from '../../documents/kitchen.ts';
import type { Step } from '../../documents/method.ts';
import { newestFormula } from '../../floor/contents.ts';
import type { FloorState } from '../../floor/state.ts';
import { versionKey } from '../../floor/state.ts';
import type { BuildFault, DayCalendars, DayInput } from './day-input.ts';
import { ProblemDraft } from './problem-draft.ts';
import type { Thread } from './thread.ts';

/** A kitchen in which nothing is counted: of a house that has not said yet what it has. */
const NO_KITCHEN: Kitchen = { stations: [], mixers: [], bowls: [], restPlaces: [], vessels: [], ovens: [] };

/** Everything that building one day needs to know; what is looked up often is kept. */
export class BuildContext {
  readonly state: FloorState;
  readonly kitchen: Kitchen;
  readonly nowMs: number;
  readonly originMs: number;
  /** The end of what calendars reach. */
  readonly endMs: number;
  readonly calendars: DayCalendars;
  readonly draft = new ProblemDraft();
  readonly faults: BuildFault[] = [];
  readonly find: FormulaOf;
  readonly ingredients: readonly Ingredient[];
  private readonly allergensByFormula = new Map<Formula, readonly Allergen[]>();
  private readonly allergensByProduct = new Map<Product, readonly Allergen[]>();

  constructor(input: DayInput, originMs: number) {
    this.originMs = originMs;
    this.state = input.state;
    this.kitchen = input.state.kitchen?.document ?? NO_KITCHEN;
    this.nowMs = input.nowMs;
    this.endMs = Math.max(input.nowMs, input.calendarsEndMs);
    this.calendars = input.calendars;
    const find = newestFormula(input.state);
    const known = new Map<string, Formula | null>();
    this.find = (id) => {
      const before = known.get(id);
      if (before !== undefined) return before;
      const formula = find(id);
      known.set(id, formula);
      return formula;
    };
    this.ingredients = input.state.ingredients?.document ?? [];
  }

  /** Whole seconds after the origin. */
  secondOf(ms: number): number {
    return Math.round((ms - this.originMs) / 1000);
  }

  get nowS(): number {
    return Math.floor((this.nowMs - this.originMs) / 1000);
  }

  /** The product in force; null where the house has none. */
  newestProduct(id: string): Product | null {
    return this.state.products[versionKey(id, this.state.productVersions[id] ?? 0)] ?? null;
  }

  /** Allergens of what a formula makes, sorted. */
  allergensOf(formula: Formula): readonly Allergen[] {
    const known = this.allergensByFormula.get(formula);
    if (known !== undefined) return known;
    const allergens = allergensIn(formula, this.find, this.ingredients);
    this.allergensByFormula.set(formula, allergens);
    return allergens;
  }

  /** Allergens of a dough on the bench: with what its product's way adds. */
  allergensOn({ allergens, formula, product }: Pick<Thread, 'allergens' | 'formula' | 'product'>): readonly Allergen[] {
    if (product === null) return allergens;
    let made = this.allergensByProduct.get(product);
    if (made === undefined) {
      made = allergensOfFacts(productAllergens(product, formula, this.find, this.ingredients));
      this.allergensByProduct.set(product, made);
    }
    return [...new Set([...allergens, ...made])].sort();
  }

  /** What a step takes of a formula, in grams. */
  takenG(
    step: Step,
    formulaId: string,
    from: { readonly formula: Formula; readonly grams: number; readonly pieces: number | null },
  ): number {
    return step.additions
      .filter((addition) => addition.formula === formulaId)
      .reduce((sum, addition) => sum + additionG(addition, from.formula, from.grams, from.pieces, this.find, this.ingredients).grams, 0);
  }
}
