import { importedRecipe, recipeName, recipesInText, type BookNames, type ImportedRecipe } from '../../shared/book/recipe-import.ts';
import type { RecipeFault } from '../../shared/book/recipe-documents.ts';
import type { BookIndex } from '../../shared/book/book-api.ts';
import { bookHolds, type BookHolds } from './import-book.ts';

type Recipes = Extract<ReturnType<typeof recipesInText>, { ok: true }>['value'];

/** What a text turned out to be. */
export type TextRead =
  | { readonly kind: 'book'; readonly value: unknown; readonly holds: BookHolds }
  | { readonly kind: 'recipes'; readonly recipes: Recipes }
  | { readonly kind: 'fault'; readonly fault: RecipeFault };

/** What came of one recipe. */
export type RecipeRead = { readonly ok: true; readonly recipe: ImportedRecipe } | { readonly ok: false; readonly fault: RecipeFault };

/** Tells a book of ours from recipes in the open vocabulary, whichever a text holds. */
export function readText(text: string): TextRead {
  const value = parsed(text);
  const holds = value === undefined ? null : bookHolds(value);
  if (holds !== null) return { kind: 'book', value, holds };
  const recipes = recipesInText(text);
  return recipes.ok ? { kind: 'recipes', recipes: recipes.value } : { kind: 'fault', fault: recipes.fault };
}

/** One of the recipes as a draft for this book. */
export function readRecipe(recipes: Recipes, at: number, index: BookIndex | null): RecipeRead {
  const result = importedRecipe(recipes[at], index?.ingredients ?? [], namesOf(index));
  return result.ok ? { ok: true, recipe: result.value } : { ok: false, fault: result.fault };
}

/** The recipes by name, for a choice among them. */
export function recipeNames(recipes: Recipes): readonly string[] {
  return recipes.map((recipe, at) => recipeName(recipe) || String(at + 1));
}

function namesOf(index: BookIndex | null): BookNames {
  const entries = index?.entries ?? [];
  return {
    formulaIds: new Set(entries.map(({ id }) => id)),
    productIds: new Set(entries.flatMap(({ products }) => products.map(({ id }) => id))),
    letters: new Set(entries.filter(({ isArchived }) => !isArchived).map(({ letters }) => letters)),
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, '')) as unknown;
  } catch {
    return undefined;
  }
}
