import type { Formula, Ingredient } from './formula.ts';
import type { Kitchen } from './kitchen.ts';
import type { Step } from './method.ts';
import { idSet } from './kitchen-faults.ts';

/** A formula of the book as far as it is known: a screen has the insides of those alone that its draft takes from. */
export type KnownFormula = Pick<Formula, 'id' | 'letters' | 'kind'> & Partial<Pick<Formula, 'parts' | 'method'>>;

/** What a document of the book is held against. */
export interface BookContext {
  readonly kitchen: Kitchen;
  readonly ingredients: readonly Ingredient[];
  /** Those in force that are not archived. One with the id of the formula that is looked at is passed over. */
  readonly formulas: readonly KnownFormula[];
}

/** The same by ids, made once for many documents. */
export interface BookLookup {
  readonly formulas: ReadonlyMap<string, KnownFormula>;
  /** Ids of the formulas that bear letters, in the book's order. */
  readonly byLetters: ReadonlyMap<string, readonly string[]>;
  readonly ingredientIds: ReadonlySet<string>;
  readonly flourIds: ReadonlySet<string>;
  readonly stationIds: ReadonlySet<string>;
  readonly placeIds: ReadonlySet<string>;
  /** What claims of each kind may name. */
  readonly claimIds: Readonly<Record<Step['claims'][number]['kind'], ReadonlySet<string>>>;
  /** Slots of all ovens. */
  readonly slotIds: ReadonlySet<string>;
  /** How many speeds each mixer has; undefined where nobody counted. */
  readonly speeds: ReadonlyMap<string, number | undefined>;
  readonly ingredients: readonly Ingredient[];
}

/** Sorts a context by ids. */
export function bookLookup({ kitchen, ingredients, formulas }: BookContext): BookLookup {
  const byLetters = new Map<string, string[]>();
  for (const { id, letters } of formulas) {
    const ids = byLetters.get(letters);
    if (ids === undefined) byLetters.set(letters, [id]);
    else ids.push(id);
  }
  const placeIds = idSet(kitchen.restPlaces);
  const stationIds = idSet(kitchen.stations);
  return {
    // The first of two with one id counts.
    formulas: new Map(formulas.toReversed().map((formula) => [formula.id, formula])),
    byLetters,
    ingredientIds: idSet(ingredients),
    flourIds: idSet(ingredients.filter((ingredient) => ingredient.kind === 'flour')),
    stationIds,
    placeIds,
    claimIds: {
      mixer: idSet(kitchen.mixers),
      bowl: idSet(kitchen.bowls),
      restPlace: placeIds,
      vessel: idSet(kitchen.vessels),
      deck: idSet(kitchen.ovens.flatMap((oven) => oven.decks)),
      bench: placeIds,
      hands: stationIds,
    },
    slotIds: idSet(kitchen.ovens.flatMap((oven) => oven.decks.flatMap((deck) => deck.slots))),
    speeds: new Map(kitchen.mixers.map((mixer) => [mixer.id, mixer.speeds])),
    ingredients,
  };
}

/** A formula with its insides; null where there is none or they are not known. */
export function wholeFormula(lookup: BookLookup, id: string): Formula | null {
  const known = lookup.formulas.get(id);
  return known !== undefined && isWhole(known) ? known : null;
}

function isWhole(known: KnownFormula): known is Formula {
  return known.parts !== undefined && known.method !== undefined;
}
