import type { Ingredient } from '../../shared/documents/formula.ts';

/** An ingredient is to be written or changed on the spot: the one given, or a new one of a name, which then goes into a part. */
export class IngredientWantedEvent extends Event {
  static readonly type = 'ingredient-wanted';
  readonly ingredient: Ingredient | null;
  readonly name: string;
  readonly partIndex: number | null;

  constructor(ingredient: Ingredient | null, name: string, partIndex: number | null = null) {
    super(IngredientWantedEvent.type, { bubbles: true, composed: true });
    this.ingredient = ingredient;
    this.name = name;
    this.partIndex = partIndex;
  }
}

declare global {
  interface HTMLElementEventMap {
    'ingredient-wanted': IngredientWantedEvent;
  }
}
