import type { Part, PartItem } from '../documents/formula.ts';

/**
 * The parts of a formula without what was kept back of the pot itself: the pot is made of everything else, so that
 * everything else stands for it, in the proportions that it has. The last part weighs what it weighed. Null where there is
 * nothing else.
 */
export function withoutSeed(parts: readonly Part[]): readonly Part[] | null {
  if (!parts.some(({ items }) => items.some((line) => 'seed' in line))) return parts;
  const bare: Part[] = [];
  for (const part of parts) bare.push({ ...part, items: part.items.flatMap((line) => bareLine(line, parts, bare)) });
  const beforeG = itemsG(parts.at(-1)?.items ?? []);
  const bareG = itemsG(bare.at(-1)?.items ?? []);
  if (bareG === 0) return beforeG === 0 ? bare : null;
  const factor = beforeG / bareG;
  return bare.map((part) => ({ ...part, items: part.items.map((line) => ({ ...line, g: line.g * factor })) }));
}

/** What takes the whole of a part still takes the whole of it when its seed is out. */
function bareLine(line: PartItem, parts: readonly Part[], bare: readonly Part[]): PartItem[] {
  if ('seed' in line) return [];
  if (!('part' in line)) return [line];
  const index = parts.findIndex(({ name }) => name === line.part);
  const beforeG = itemsG(parts[index]?.items ?? []);
  const after = bare[index];
  return [after === undefined || beforeG === 0 ? line : { ...line, g: (line.g * itemsG(after.items)) / beforeG }];
}

function itemsG(items: readonly PartItem[]): number {
  return items.reduce((sum, { g }) => sum + g, 0);
}
