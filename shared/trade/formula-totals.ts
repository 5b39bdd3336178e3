import { accepted, refused, unreachable, type Result } from '../result.ts';
import {
  isPartTaken,
  listedG,
  ownPercents,
  waterOfG,
  type CalcFault,
  type CalcItem,
  type CalcPart,
  type IngredientItem,
} from './calc-part.ts';
import { timesTaken } from './part-tree.ts';

export type { CalcFault, CalcItem, CalcPart } from './calc-part.ts';

/** To how much the dough is scaled: its own weight, all its flour, or pieces of a weight with what is lost of it, per cent. */
export type CalcScale =
  | { readonly doughG: number }
  | { readonly flourG: number }
  | { readonly pieces: number; readonly pieceG: number; readonly lossPct?: number };

/** A line of a part as it is weighed: grams, and per cent of the part's own flour (null where it has none). */
export interface TotalItem {
  readonly item: string;
  readonly g: number;
  readonly pct: number | null;
}

export interface PartTotal {
  readonly name: string;
  readonly totalG: number;
  readonly items: readonly TotalItem[];
}

/** A dough by weight, and what it is per cent of all its flour; null where there is none (fillings). Grams. */
export interface DoughSums {
  readonly flourG: number;
  readonly waterG: number;
  readonly doughG: number;
  readonly hydrationPct: number | null;
  readonly saltPct: number | null;
  readonly yeastPct: number | null;
  readonly prefermentedFlourPct: number | null;
  readonly sumPct: number | null;
  readonly doughYield: number | null;
  readonly parts: readonly PartTotal[];
}

/** The same of a dough that has flour. */
export type FormulaTotals = { readonly [Key in keyof DoughSums]: NonNullable<DoughSums[Key]> };

/**
 * What a formula comes to: all flour and water, preferments included, and every part once, scaled to what the dough needs of
 * it. Without `scale` the dough is as listed. Refused where there is no flour, where a part is missing, unused, repeated or
 * contains itself, and where a weight or the scale is nothing that can be weighed.
 */
export function totalsOf(parts: readonly CalcPart[], scale?: CalcScale): Result<FormulaTotals, CalcFault> {
  const sums = sumsOf(parts, scale);
  if (!sums.ok) return sums;
  return hasFlour(sums.value) ? accepted(sums.value) : refused(noFlour());
}

/** The same for what may have no flour: its percentages are null then. It cannot be scaled to flour. */
export function sumsOf(parts: readonly CalcPart[], scale?: CalcScale): Result<DoughSums, CalcFault> {
  const times = timesTaken(parts);
  if (!times.ok) return times;
  const listed = sumUp(parts, times.value);
  const factor = scale === undefined ? accepted(1) : scaleFactor(listed, scale);
  if (!factor.ok) return factor;
  const value = scaledBy(listed, parts, times.value, factor.value);
  return isFinite(value)
    ? accepted(value)
    : refused({ code: 'notFinite', field: 'parts', message: 'the weights are too large, or too small, to be reckoned with' });
}

function hasFlour(sums: DoughSums): sums is FormulaTotals {
  return sums.sumPct !== null;
}

function noFlour(): CalcFault {
  return { code: 'noFlour', field: 'parts', message: 'there is no flour' };
}

interface Amounts {
  readonly flourG: number;
  readonly waterG: number;
  readonly saltG: number;
  readonly yeastG: number;
  readonly prefermentedG: number;
  readonly doughG: number;
}

function sumUp(parts: readonly CalcPart[], times: readonly number[]): Amounts {
  const sum = { flourG: 0, waterG: 0, saltG: 0, yeastG: 0, prefermentedG: 0, doughG: 0 };
  for (const [index, part] of parts.entries()) {
    const isPreferment = index < parts.length - 1 && part.role !== 'soaker';
    for (const item of part.items) {
      if (!isPartTaken(item)) addItem(sum, item, times[index] ?? 0, isPreferment);
    }
  }
  const dough = parts.at(-1);
  sum.doughG = dough === undefined ? 0 : listedG(dough);
  return sum;
}

function addItem(sum: { -readonly [Key in keyof Amounts]: number }, item: IngredientItem, times: number, isPreferment: boolean): void {
  const g = item.g * times;
  sum.waterG += waterOfG(item) * times;
  if (item.kind === 'flour') sum.flourG += g;
  if (item.kind === 'flour' && isPreferment) sum.prefermentedG += g;
  if (item.kind === 'salt') sum.saltG += g;
  if (item.kind === 'yeast') sum.yeastG += g;
}

function scaleFactor({ doughG, flourG }: Amounts, scale: CalcScale): Result<number, CalcFault> {
  const target = scaleTarget(scale);
  if (!target.ok) return target;
  const from = 'flourG' in scale ? flourG : doughG;
  if (from === 0) return refused(noFlour());
  return accepted(target.value / from);
}

function scaleTarget(scale: CalcScale): Result<number, CalcFault> {
  if ('doughG' in scale) return weightTarget('doughG', scale.doughG);
  if ('flourG' in scale) return weightTarget('flourG', scale.flourG);
  if ('pieces' in scale) return piecesTarget(scale.pieces, scale.pieceG, scale.lossPct ?? 0);
  return unreachable(scale);
}

function piecesTarget(pieces: number, pieceG: number, lossPct: number): Result<number, CalcFault> {
  if (!Number.isSafeInteger(pieces)) return refused({ code: 'notWhole', field: 'scale.pieces', message: 'pieces are a whole number' });
  const whole = weightTarget('pieces', pieces);
  if (!whole.ok) return whole;
  if (!(lossPct >= 0 && lossPct < 100))
    return refused({ code: 'lossTooLarge', field: 'scale.lossPct', message: 'the loss is at least 0 and less than 100 per cent' });
  const piece = weightTarget('pieceG', pieceG);
  return piece.ok ? accepted((pieces * pieceG) / (1 - lossPct / 100)) : piece;
}

function weightTarget(field: string, value: number): Result<number, CalcFault> {
  if (Number.isFinite(value) && value > 0) return accepted(value);
  return refused({ code: 'scaleNothing', field: `scale.${field}`, message: 'a dough is scaled to more than nothing' });
}

function scaledBy(listed: Amounts, parts: readonly CalcPart[], times: readonly number[], factor: number): DoughSums {
  const { flourG, waterG, saltG, yeastG, prefermentedG, doughG } = listed;
  const onFlour = (g: number): number | null => (flourG > 0 ? (g / flourG) * 100 : null);
  return {
    flourG: flourG * factor,
    waterG: waterG * factor,
    doughG: doughG * factor,
    hydrationPct: onFlour(waterG),
    saltPct: onFlour(saltG),
    yeastPct: onFlour(yeastG),
    prefermentedFlourPct: onFlour(prefermentedG),
    sumPct: onFlour(doughG),
    doughYield: onFlour(flourG + waterG),
    parts: parts.map((part, index) => partTotal(part, (times[index] ?? 0) * factor)),
  };
}

function partTotal(part: CalcPart, times: number): PartTotal {
  const percents = ownPercents(part.items);
  return {
    name: part.name,
    totalG: listedG(part) * times,
    items: part.items.map((item, line) => ({ item: nameOf(item), g: item.g * times, pct: percents[line] ?? null })),
  };
}

function nameOf(item: CalcItem): string {
  return isPartTaken(item) ? item.part : item.item;
}

function isFinite({ parts, ...sums }: DoughSums): boolean {
  const isNumber = (value: number | null): boolean => value === null || Number.isFinite(value);
  return (
    Object.values(sums).every(isNumber) &&
    parts.every(({ totalG, items }) => isNumber(totalG) && items.every(({ g, pct }) => isNumber(g) && isNumber(pct)))
  );
}
