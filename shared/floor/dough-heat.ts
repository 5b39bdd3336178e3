import { sharesOf } from '../documents/amounts.ts';
import type { Formula, Ingredient, PartItem } from '../documents/formula.ts';
import { SPECIFIC_HEAT_KJ_PER_KG_K, type HeatPart } from '../trade/heat-balance.ts';
import { newestFormula } from './contents.ts';
import type { FloorState } from './state.ts';
import type { WeighLine, WeighPart } from './weigh-out.ts';

/** Dairy that has at least so much water, per cent, is poured like water and carries the dough's warmth: our choice. */
const POURED_WATER_PCT = 80;

/** What is poured into a dough to set its temperature. */
export interface Liquid {
  readonly lineIds: readonly string[];
  readonly name: string;
  /** Ice can stand for some of it. */
  readonly isWater: boolean;
  /** All of it, what is kept back at first included, in grams. */
  readonly grams: number;
  readonly heldBackG: number;
  readonly kJPerKgK: number;
}

/** The water of a dough, or the milk of one that has none; null where nothing is poured. */
export function liquidOf(state: FloorState, dough: WeighPart): Liquid | null {
  const water = dough.lines.filter((line) => ingredientOf(state, line)?.kind === 'water');
  const milk = dough.lines.filter((line) => isPoured(ingredientOf(state, line)));
  const lines = water.length > 0 ? water : milk;
  const grams = lines.reduce((sum, line) => sum + line.grams, 0);
  const [first] = lines;
  if (first === undefined || grams === 0) return null;
  return {
    lineIds: lines.map((line) => line.id),
    name: first.name,
    isWater: water.length > 0,
    grams,
    heldBackG: lines.reduce((sum, line) => sum + line.heldBackG, 0),
    kJPerKgK: SPECIFIC_HEAT_KJ_PER_KG_K[water.length > 0 ? 'water' : 'dairy'],
  };
}

/** Whether a line of the dough is a preferment: what a living ferment makes, or a part that ferments beforehand. */
export function isPreferment(state: FloorState, formula: Formula, line: WeighLine): boolean {
  if (line.formulaId !== null) return newestFormula(state)(line.formulaId)?.kind === 'ferment';
  return line.kind === 'part' && formula.parts.find((part) => part.name === line.name)?.role === 'preferment';
}

/** Everything of a dough but its liquid, with its heat and its temperature. What is neither flour nor preferment is as warm as the room. */
export function heatPartsOf(
  state: FloorState,
  formula: Formula,
  dough: WeighPart,
  liquid: Liquid,
  { flourC, roomC, prefermentC }: { readonly flourC: number; readonly roomC: number; readonly prefermentC: number | null },
): readonly HeatPart[] {
  return dough.lines.flatMap((line, index) => {
    const item = formula.parts.at(-1)?.items[index];
    if (item === undefined || liquid.lineIds.includes(line.id)) return [];
    const isFlour = ingredientOf(state, line)?.kind === 'flour';
    const tempC = isFlour ? flourC : isPreferment(state, formula, line) ? (prefermentC ?? roomC) : roomC;
    return [{ g: line.grams, kJPerKgK: specificHeatOf(state, formula, item), tempC }];
  });
}

/** Specific heat of a line, in kJ/(kg·K): of its kind, or of what it is made of. */
function specificHeatOf(state: FloorState, formula: Formula, item: PartItem): number {
  if ('item' in item) return SPECIFIC_HEAT_KJ_PER_KG_K[kindOf(state, item.item)];
  const within = madeOf(state, formula, item);
  const shares = within === null ? [] : [...sharesOf(within, newestFormula(state))];
  if (shares.length === 0) return SPECIFIC_HEAT_KJ_PER_KG_K.other;
  return shares.reduce((sum, [id, share]) => sum + share * SPECIFIC_HEAT_KJ_PER_KG_K[kindOf(state, id)], 0);
}

/** The formula whose last part a line is: another one, or this one up to that part. */
function madeOf(state: FloorState, formula: Formula, item: Exclude<PartItem, { item: string }>): Formula | null {
  if ('formula' in item) return newestFormula(state)(item.formula);
  if (!('part' in item)) return formula;
  const index = formula.parts.findIndex((part) => part.name === item.part);
  return index === -1 ? null : { ...formula, parts: formula.parts.slice(0, index + 1) };
}

function kindOf(state: FloorState, id: string): Ingredient['kind'] {
  return state.ingredients?.document.find((ingredient) => ingredient.id === id)?.kind ?? 'other';
}

function ingredientOf(state: FloorState, line: WeighLine): Ingredient | null {
  return state.ingredients?.document.find((ingredient) => ingredient.id === line.ingredientId) ?? null;
}

function isPoured(ingredient: Ingredient | null): boolean {
  return ingredient?.kind === 'dairy' && (ingredient.waterPct ?? 0) >= POURED_WATER_PCT;
}
