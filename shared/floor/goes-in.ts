import { additionG } from '../documents/amounts.ts';
import type { Formula, PartItem } from '../documents/formula.ts';
import type { Addition } from '../documents/method.ts';
import { newestFormula } from './contents.ts';
import { mixingIndex } from './mixing-begun.ts';
import type { FloorState, Workpiece } from './state.ts';

/** How much of a line goes in at a step; at the start where the step is null. */
export interface GoesIn {
  readonly stepId: string | null;
  readonly grams: number;
  readonly isHeldBack: boolean;
}

/** Less than this of a line is no portion of its own, in grams. */
const NO_PORTION_G = 0.05;

/**
 * When each line of the last part goes in, in grams, in the order of the method: what no addition names goes in at the
 * start. An addition that names what stands only in an earlier part means that part's whole line. Additions by the piece
 * belong to another weigh-out.
 */
export function portionsOf(
  state: FloorState,
  workpiece: Workpiece,
  formula: Formula,
  doughLinesG: readonly number[],
): readonly (readonly GoesIn[])[] {
  const items = formula.parts.at(-1)?.items ?? [];
  const leftG = [...doughLinesG];
  const later: GoesIn[][] = items.map(() => []);
  const begins = mixingIndex(formula.method);
  for (const [index, step] of formula.method.entries()) {
    for (const addition of step.additions) {
      if (addition.gPerPiece !== undefined || (index < begins && !addition.heldBack)) continue;
      let toAllotG = wantedG(state, workpiece, formula, addition);
      for (const line of linesNamed(formula, items, addition)) {
        const isWhole = toAllotG === null;
        const grams = Math.min(leftG[line] ?? 0, toAllotG ?? Infinity);
        if (grams < NO_PORTION_G) continue;
        leftG[line] = (leftG[line] ?? 0) - grams;
        if (!isWhole) toAllotG = (toAllotG ?? 0) - grams;
        later[line]?.push({ stepId: step.id, grams, isHeldBack: addition.heldBack });
      }
    }
  }
  return later.map((portions, line) => {
    const startG = leftG[line] ?? 0;
    return startG < NO_PORTION_G && portions.length > 0 ? portions : [{ stepId: null, grams: startG, isHeldBack: false }, ...portions];
  });
}

/** How much an addition says, in grams; null where it means all of the line that it names. */
function wantedG(state: FloorState, workpiece: Workpiece, formula: Formula, addition: Addition): number | null {
  if (addition.pct === undefined) return null;
  return additionG(addition, formula, workpiece.scaledToG, null, newestFormula(state), state.ingredients?.document ?? []).grams;
}

/** Indices of the lines that an addition names, or of the earlier parts that hold what it names. */
function linesNamed(formula: Formula, items: readonly PartItem[], addition: Addition): readonly number[] {
  const named = items.flatMap((line, index) => (isNamed(line, addition) ? [index] : []));
  if (named.length > 0) return named;
  return items.flatMap((line, index) => ('part' in line && holds(formula, line.part, addition) ? [index] : []));
}

function isNamed(line: PartItem, addition: Addition): boolean {
  if ('item' in line) return addition.item === line.item;
  return 'formula' in line && addition.formula === line.formula;
}

function holds(formula: Formula, partName: string, addition: Addition): boolean {
  const index = formula.parts.findIndex((part) => part.name === partName);
  const earlier = { ...formula, parts: formula.parts.slice(0, index) };
  const items = formula.parts[index]?.items ?? [];
  return items.some((line) => isNamed(line, addition) || ('part' in line && holds(earlier, line.part, addition)));
}
