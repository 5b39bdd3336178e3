import { seedGIn } from './amounts.ts';
import type { BookLookup, KnownFormula } from './book-lookup.ts';
import type { Formula, Part, PartItem } from './formula.ts';
import type { Fault } from './kitchen-faults.ts';
import { checkTaken } from './taken.ts';

/** What is impossible in the parts of a formula. */
export function checkParts(formula: Formula, path: string, lookup: BookLookup, fault: Fault): void {
  const earlier = new Set<string>();
  const taken = new Set<string>();
  let seeds = 0;
  const checkLine = (line: PartItem, at: string): void => {
    if ('item' in line) {
      if (!lookup.ingredientIds.has(line.item)) fault(`${at}.item`, { code: 'ingredientUnknown', id: line.item });
    } else if ('formula' in line) {
      checkTaken(line.formula, `${at}.formula`, formula.id, lookup, fault);
    } else if ('seed' in line) {
      seeds += 1;
      checkSeed(formula, seeds, at, path, fault);
    } else {
      if (!earlier.has(line.part)) fault(`${at}.part`, { code: 'partUnknown', name: line.part });
      if (taken.has(line.part)) fault(`${at}.part`, { code: 'partTakenTwice', name: line.part });
      taken.add(line.part);
    }
  };
  formula.parts.forEach((part, partIndex) => {
    const at = `${path}.parts[${partIndex}]`;
    part.items.forEach((line, lineIndex) => checkLine(line, `${at}.items[${lineIndex}]`));
    if (earlier.has(part.name)) fault(`${at}.name`, { code: 'idTwice', id: part.name });
    earlier.add(part.name);
    if (freshG(part) === 0) fault(`${at}.items`, { code: 'noWeight' });
  });
  const last = formula.parts.length - 1;
  formula.parts.forEach((part, partIndex) => {
    if (partIndex !== last && part.name !== formula.parts[last]?.name && !taken.has(part.name))
      fault(`${path}.parts[${partIndex}].name`, { code: 'partIdle', name: part.name });
  });
  const weighs = formula.parts.every((part) => freshG(part) > 0);
  if (formula.kind === 'dough' && weighs && !hasFlour(formula, lookup)) fault(`${path}.parts[${last}].items`, { code: 'noFlour' });
}

function checkSeed(formula: Formula, seeds: number, at: string, path: string, fault: Fault): void {
  if (formula.kind !== 'ferment') fault(`${at}.seed`, { code: 'seedOutsideFerment' });
  else if (seeds > 1) fault(`${at}.seed`, { code: 'seedTwice' });
  else if (formula.seedG === undefined) fault(`${path}.seedG`, { code: 'seedNotKept' });
}

/** What a part weighs without the pot's own seed, in grams. */
function freshG(part: Part): number {
  return part.items.reduce((sum, line) => sum + line.g, 0) - seedGIn(part);
}

/**
 * Whether anything of what a formula makes is flour, that of the ferments and preps that it takes included. Of one whose
 * insides are not known it is believed.
 */
export function hasFlour(formula: KnownFormula, lookup: BookLookup, within: ReadonlySet<string> = new Set()): boolean {
  if (formula.parts === undefined) return true;
  if (within.has(formula.id)) return false;
  const deeper = new Set([...within, formula.id]);
  return formula.parts.some((part) =>
    part.items.some((line) => {
      if (line.g === 0) return false;
      if ('item' in line) return lookup.flourIds.has(line.item);
      if (!('formula' in line)) return false;
      const taken = lookup.formulas.get(line.formula);
      return taken !== undefined && hasFlour(taken, lookup, deeper);
    }),
  );
}
