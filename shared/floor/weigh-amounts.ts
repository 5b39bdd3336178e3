import { madeG } from '../documents/amounts.ts';
import type { Formula } from '../documents/formula.ts';
import { formulaOf } from './contents.ts';
import { feedByFormula } from './feed-by-formula.ts';
import type { FloorState, Workpiece } from './state.ts';

/** Grams of every line, by the index of its part and its index in it, not rounded. */
export type LinesG = readonly (readonly number[])[];

/**
 * The lines of a formula scaled so that its last part makes `wholeG` grams. Each earlier part is scaled to what the later
 * ones take of it. All are 0 where the formula makes nothing.
 */
export function scaledLinesG(formula: Formula, wholeG: number): LinesG {
  const neededG = new Map<string, number>();
  const scaled: number[][] = [];
  for (const [fromEnd, part] of [...formula.parts].reverse().entries()) {
    const writtenG = part.items.reduce((sum, line) => sum + line.g, 0);
    const partG = fromEnd === 0 ? wholeG : (neededG.get(part.name) ?? 0);
    const factor = writtenG === 0 ? 0 : partG / writtenG;
    const lines = part.items.map((line) => line.g * factor);
    for (const [index, line] of part.items.entries())
      if ('part' in line) neededG.set(line.part, (neededG.get(line.part) ?? 0) + (lines[index] ?? 0));
    scaled.unshift(lines);
  }
  return scaled;
}

/**
 * What is weighed out for a dough, a prep or the next feed of a pot, in grams. A feed's seed is what the pot can give of
 * it, made up with flour and water. Null for pieces and where nothing is known of the formula.
 */
export function neededLinesG(state: FloorState, workpiece: Workpiece): LinesG | null {
  const formula = formulaOf(state, workpiece);
  if (formula === null || workpiece.kind === 'cut' || workpiece.kind === 'load' || madeG(formula) === 0) return null;
  const [only, ...others] = formula.parts;
  if (workpiece.stock === null || only === undefined || others.length > 0) return scaledLinesG(formula, workpiece.scaledToG);
  return [feedLinesG(state, workpiece, only)];
}

/** Flour and water share what is fed of each in the proportions of their lines; everything else is seed. */
function feedLinesG(state: FloorState, pot: Workpiece, part: Formula['parts'][number]): readonly number[] {
  const feed = feedByFormula(state, pot);
  const kinds = new Map((state.ingredients?.document ?? []).map((ingredient) => [ingredient.id, ingredient.kind]));
  const goesTo = part.items.map((line) => {
    const kind = 'item' in line ? kinds.get(line.item) : undefined;
    return kind === 'flour' || kind === 'water' ? kind : 'seed';
  });
  const fedG = { flour: feed.flourG, water: feed.waterG, seed: feed.seedG };
  const writtenG = { flour: 0, water: 0, seed: 0 };
  for (const [index, line] of part.items.entries()) writtenG[goesTo[index] ?? 'seed'] += line.g;
  return part.items.map((line, index) => {
    const to = goesTo[index] ?? 'seed';
    return writtenG[to] === 0 ? 0 : (line.g * fedG[to]) / writtenG[to];
  });
}
