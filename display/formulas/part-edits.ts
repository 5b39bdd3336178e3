import type { Ingredient, Part, PartItem } from '../../shared/documents/formula.ts';

/** Weights keep a tenth of a milligram: finer than any scale, and far coarser than the arithmetic. */
const KEPT_PER_G = 10_000;

/** Which ingredients are flour, for per cent. */
export type IsFlour = (line: PartItem) => boolean;

/** Says of a line whether it is flour of its part's own. */
export function flourTest(ingredients: readonly Ingredient[]): IsFlour {
  const flours = new Set(ingredients.filter(({ kind }) => kind === 'flour').map(({ id }) => id));
  return (line) => 'item' in line && flours.has(line.item);
}

/** A weight as the book keeps it, in grams. */
export function keptG(g: number): number {
  return Math.round(g * KEPT_PER_G) / KEPT_PER_G;
}

/** What lines weigh together, in grams; what is no number counts as nothing. */
export function totalG(items: readonly PartItem[]): number {
  return items.reduce((sum, { g }) => sum + (Number.isFinite(g) ? g : 0), 0);
}

/** The flour that a part lists itself, in grams. */
export function flourG(items: readonly PartItem[], isFlour: IsFlour): number {
  return totalG(items.filter(isFlour));
}

/** A line per cent of its part's own flour; null where there is none. */
export function percentOf(line: PartItem, partFlourG: number): number | null {
  return partFlourG > 0 ? (line.g / partFlourG) * 100 : null;
}

/** Lines with another weight at one of them, in grams. */
export function withGrams(items: readonly PartItem[], index: number, g: number): readonly PartItem[] {
  return items.map((line, at) => (at === index ? { ...line, g } : line));
}

/**
 * Lines with one of them at a per cent of the part's flour. The flour's weight stays: where the line is a flour itself, the
 * other flours share the rest as they stood to one another. Null where there is no flour, or the rest would have nowhere to
 * go (the only flour is always 100), or there would be less than none of it.
 */
export function withPercent(items: readonly PartItem[], index: number, pct: number, isFlour: IsFlour): readonly PartItem[] | null {
  const line = items[index];
  const partFlourG = flourG(items, isFlour);
  if (line === undefined || !(partFlourG > 0) || !(pct >= 0)) return null;
  const g = keptG((partFlourG * pct) / 100);
  if (!isFlour(line)) return withGrams(items, index, g);
  const others = items.filter((other, at) => at !== index && isFlour(other));
  if (others.length === 0 || pct > 100) return null;
  const othersG = totalG(others);
  const shareOf = (other: PartItem): number => (othersG > 0 ? other.g / othersG : 1 / others.length);
  return items.map((other, at) => {
    if (at === index) return { ...other, g };
    return isFlour(other) ? { ...other, g: keptG((partFlourG - g) * shareOf(other)) } : other;
  });
}

/** Lines scaled so that they weigh so much together, per cent as before; null where they weigh nothing. */
export function scaledTo(items: readonly PartItem[], g: number): readonly PartItem[] | null {
  const before = totalG(items);
  if (!(before > 0) || !(g > 0)) return null;
  return items.map((line) => ({ ...line, g: keptG((line.g * g) / before) }));
}

/** A list in which one thing stands a place earlier or later; the same where it cannot. */
export function movedBy<Item>(list: readonly Item[], index: number, by: -1 | 1): readonly Item[] {
  const moved = [...list];
  if (index + by < 0 || index + by >= list.length) return list;
  moved.splice(index + by, 0, ...moved.splice(index, 1));
  return moved;
}

/** Parts in which one has another name, in the lines that take it as well. */
export function withPartNamed(parts: readonly Part[], index: number, name: string): readonly Part[] {
  const before = parts[index]?.name;
  return parts.map((part, at) => ({
    ...part,
    name: at === index ? name : part.name,
    items: part.items.map((line) => ('part' in line && line.part === before ? { ...line, part: name } : line)),
  }));
}

/** Parts without one of them, and without the lines that took it. */
export function withoutPart(parts: readonly Part[], index: number): readonly Part[] {
  const gone = parts[index]?.name;
  return parts
    .filter((_part, at) => at !== index)
    .map((part) => ({ ...part, items: part.items.filter((line) => !('part' in line) || line.part !== gone) }));
}

/**
 * Parts with one more before the last, all of which goes into the last. The flour and water of a preferment are taken out of
 * the last part's own where it has enough of them: the whole formula stays what it was.
 */
export function withPartAdded(parts: readonly Part[], part: Part, ingredients: readonly Ingredient[]): readonly Part[] {
  const last = parts.at(-1);
  if (last === undefined) return [part];
  const takes: PartItem = { part: part.name, g: keptG(totalG(part.items)) };
  const items = part.role === 'soaker' ? last.items : withoutShared(last.items, part.items, ingredients);
  return [...parts.slice(0, -1), part, { ...last, items: [...items, takes] }];
}

function withoutShared(items: readonly PartItem[], gone: readonly PartItem[], ingredients: readonly Ingredient[]): readonly PartItem[] {
  const kinds = new Map(ingredients.map(({ id, kind }) => [id, kind]));
  return items.map((line) => {
    if (!('item' in line)) return line;
    const kind = kinds.get(line.item);
    const same = gone.find((other) => 'item' in other && other.item === line.item);
    const isShared = same !== undefined && (kind === 'flour' || kind === 'water') && line.g > same.g;
    return isShared ? { ...line, g: keptG(line.g - same.g) } : line;
  });
}

/** A name that no part has yet. */
export function unusedPartName(parts: readonly Part[], wanted: string): string {
  const taken = new Set(parts.map(({ name }) => name));
  let name = wanted;
  for (let number = 2; taken.has(name); number += 1) name = `${wanted} ${number}`;
  return name;
}

/** How a pot is built up: what was kept back, flour and water, as one reads it (1 : 4 : 5). Null where a part has no seed. */
export function buildRatio(part: Part, ingredients: ReadonlyMap<string, Ingredient>): readonly [number, number, number] | null {
  let seed = 0;
  let flour = 0;
  let water = 0;
  for (const line of part.items) {
    if ('seed' in line) seed += line.g;
    if (!('item' in line)) continue;
    const kind = ingredients.get(line.item)?.kind;
    if (kind === 'flour') flour += line.g;
    if (kind === 'water') water += line.g;
  }
  return seed > 0 ? [1, flour / seed, water / seed] : null;
}
