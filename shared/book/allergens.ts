import type { Allergen } from '../documents/allergen.ts';
import type { FormulaOf } from '../documents/amounts.ts';
import type { Formula, Ingredient, PartItem, Product } from '../documents/formula.ts';
import type { Step } from '../documents/method.ts';
import { inOrder } from './allergen-groups.ts';

/** By which way an allergen comes in: an ingredient, through which parts and formulas of the book, the outermost first. */
export interface AllergenSource {
  readonly allergen: Allergen;
  /** Null for what came in on the floor and no formula names. */
  readonly ingredientId: string | null;
  /** Names of preferments, soakers, fillings; empty where the ingredient goes straight in. */
  readonly through: readonly string[];
}

/** Allergens of something that is made, as its ingredients declare them, with what cannot be told. */
export interface AllergenFacts {
  /** By allergen in the order of the schema; no two alike. */
  readonly sources: readonly AllergenSource[];
  /** Ids of ingredients and formulas that the book lacks: what they bring is not known. */
  readonly missing: readonly string[];
  /** Whether earlier dough or bread may go back in: whatever that contains comes with it. */
  readonly takesBack: boolean;
}

/** A product with what it contains beyond the dough that it shares with others. */
export interface ProductAllergens {
  readonly productId: string;
  readonly name: string;
  /** Dough and way together. */
  readonly facts: AllergenFacts;
  /** What the dough has not: its filling, its wash, its topping. */
  readonly own: readonly Allergen[];
}

/** What a dough of several products shares, and what each of them contains. */
export interface SharedAllergens {
  readonly shared: AllergenFacts;
  readonly products: readonly ProductAllergens[];
}

/** Every allergen once, in the order of the schema. */
export function allergensOfFacts(facts: AllergenFacts): readonly Allergen[] {
  return inOrder(facts.sources.map(({ allergen }) => allergen));
}

/**
 * What a formula brings in: by the lines of all its parts, by what its method adds at steps, by the preps that join it, and
 * by every formula that it takes of, at any depth. A line of no weight counts as well.
 */
export function allergenSources(formula: Formula, formulaOf: FormulaOf, ingredients: readonly Ingredient[]): AllergenFacts {
  const gathering = new Gathering(formulaOf, ingredients);
  gathering.formula(formula, []);
  return gathering.facts();
}

/** What a product contains: its formula, and what its own way adds. `formula` is null where the book lacks it. */
export function productAllergens(
  product: Product,
  formula: Formula | null,
  formulaOf: FormulaOf,
  ingredients: readonly Ingredient[],
): AllergenFacts {
  const gathering = new Gathering(formulaOf, ingredients);
  if (formula === null) gathering.lacks(product.formula);
  else gathering.formula(formula, []);
  gathering.way(product.way, product.sidePreps, []);
  return gathering.facts();
}

/** What a dough and each of the products that are made of it contain. */
export function sharedAllergens(
  formula: Formula,
  products: readonly Product[],
  formulaOf: FormulaOf,
  ingredients: readonly Ingredient[],
): SharedAllergens {
  const shared = allergenSources(formula, formulaOf, ingredients);
  const inDough = new Set(allergensOfFacts(shared));
  return {
    shared,
    products: products.map((product) => {
      const facts = productAllergens(product, formula, formulaOf, ingredients);
      const own = allergensOfFacts(facts).filter((allergen) => !inDough.has(allergen));
      return { productId: product.id, name: product.name, facts, own };
    }),
  };
}

/** Gathers what one dish takes, wherever it comes from. */
class Gathering {
  readonly #formulaOf: FormulaOf;
  readonly #ingredients: ReadonlyMap<string, Ingredient>;
  readonly #sources = new Map<string, AllergenSource>();
  readonly #missing = new Set<string>();
  /** Formulas that are open: one that takes of itself brings nothing new. */
  readonly #open = new Set<string>();
  /** Formulas with the way by which they came: by the same way they bring the same. */
  readonly #read = new Set<string>();
  #takesBack = false;

  constructor(formulaOf: FormulaOf, ingredients: readonly Ingredient[]) {
    this.#formulaOf = formulaOf;
    this.#ingredients = new Map(ingredients.map((ingredient) => [ingredient.id, ingredient]));
  }

  formula(formula: Formula, through: readonly string[]): void {
    const way = JSON.stringify([formula.id, ...through]);
    if (this.#open.has(formula.id) || this.#read.has(way)) return;
    this.#read.add(way);
    this.#open.add(formula.id);
    this.#takesBack ||= formula.takesBack.length > 0;
    formula.parts.forEach((part, index) => {
      const isLast = index === formula.parts.length - 1;
      for (const line of part.items) this.#line(line, isLast ? through : [...through, part.name]);
    });
    this.way(formula.method, formula.sidePreps, through);
    this.#open.delete(formula.id);
  }

  way(steps: readonly Step[], sidePreps: Formula['sidePreps'], through: readonly string[]): void {
    for (const { item, formula } of steps.flatMap((step) => step.additions)) {
      if (item !== undefined) this.#ingredient(item, through);
      if (formula !== undefined) this.#taken(formula, through);
    }
    for (const prep of sidePreps) this.#taken(prep.formula, through);
  }

  lacks(id: string): void {
    this.#missing.add(id);
  }

  facts(): AllergenFacts {
    const all = [...this.#sources.values()];
    return {
      sources: inOrder(all.map(({ allergen }) => allergen)).flatMap((allergen) => all.filter((source) => source.allergen === allergen)),
      missing: [...this.#missing],
      takesBack: this.#takesBack,
    };
  }

  #line(line: PartItem, through: readonly string[]): void {
    if ('item' in line) this.#ingredient(line.item, through);
    else if ('formula' in line) this.#taken(line.formula, through);
    // A part's own lines are read where it stands; the pot's seed is made of the rest.
  }

  #taken(formulaId: string, through: readonly string[]): void {
    const formula = this.#formulaOf(formulaId);
    if (formula === null) this.lacks(formulaId);
    else this.formula(formula, [...through, formula.name]);
  }

  #ingredient(id: string, through: readonly string[]): void {
    const ingredient = this.#ingredients.get(id);
    if (ingredient === undefined) {
      this.lacks(id);
      return;
    }
    for (const allergen of ingredient.allergens) {
      const source: AllergenSource = { allergen, ingredientId: id, through };
      this.#sources.set(JSON.stringify([allergen, id, ...through]), source);
    }
  }
}
