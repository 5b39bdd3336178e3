/** What an ingredient counts towards in the totals. */
export type ItemKind = 'flour' | 'water' | 'salt' | 'yeast' | 'fat' | 'sugar' | 'egg' | 'dairy' | 'seed' | 'other';

/** An ingredient's line. `waterPct` is the water in it, per cent, where it counts (egg, milk). Grams. */
export interface IngredientItem {
  readonly item: string;
  readonly kind: ItemKind;
  readonly g: number;
  readonly waterPct?: number;
}

/** So many grams of another part. */
export interface PartTaken {
  readonly part: string;
  readonly g: number;
}

export type CalcItem = IngredientItem | PartTaken;

/** Poolish, levain, soaker, and last the dough: names are unique, and only a soaker's role matters to the sums. */
export interface CalcPart {
  readonly name: string;
  readonly role?: 'preferment' | 'soaker' | 'dough';
  readonly items: readonly CalcItem[];
}

/** What cannot be reckoned: a code, the field at which it stands (`parts[0].items[1].part`), and words for scripts and logs. */
export interface CalcFault {
  readonly code: CalcFaultCode;
  readonly field: string;
  readonly message: string;
}

export type CalcFaultCode =
  | 'noParts'
  | 'noFlour'
  | 'partRepeated'
  | 'partMissing'
  | 'partUnused'
  | 'partOfItself'
  | 'partWeightless'
  | 'negative'
  | 'notFinite'
  | 'scaleNothing'
  | 'moreThanOneScale'
  | 'notWhole'
  | 'lossTooLarge'
  | 'formulaMissing'
  | 'ingredientMissing'
  | 'seedAlone'
  | 'nameUnknown'
  | 'notJson'
  | 'fieldMissing'
  | 'fieldUnknown'
  | 'wrongType'
  | 'outOfRange'
  | 'wordUnknown'
  | 'notExactlyOne'
  | 'noTemperatures'
  | 'noWater'
  | 'tooFewReadings'
  | 'sameTime'
  | 'notRising'
  | 'noCoolingFigures';

/** Whether a line takes another part. */
export function isPartTaken(item: CalcItem): item is PartTaken {
  return 'part' in item;
}

/** What a part weighs as it is listed, in grams. */
export function listedG(part: CalcPart): number {
  return part.items.reduce((sum, { g }) => sum + g, 0);
}

/** The flour that a part lists itself, in grams, without what it takes of other parts. */
export function ownFlourG(items: readonly CalcItem[]): number {
  return items.reduce((sum, item) => sum + (!isPartTaken(item) && item.kind === 'flour' ? item.g : 0), 0);
}

/** The water that a line brings, in grams: water is all water unless the line says otherwise. */
export function waterOfG({ kind, g, waterPct }: IngredientItem): number {
  return (g * (waterPct ?? (kind === 'water' ? 100 : 0))) / 100;
}

/** Each line on the part's own flour, per cent; null where it has none. */
export function ownPercents(items: readonly CalcItem[]): readonly (number | null)[] {
  const flourG = ownFlourG(items);
  return items.map(({ g }) => (flourG > 0 ? (g / flourG) * 100 : null));
}
