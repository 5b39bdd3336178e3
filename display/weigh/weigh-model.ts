import type { Ingredient } from '../../shared/documents/formula.ts';
import type { Verb } from '../../shared/documents/method.ts';
import { formulaOf } from '../../shared/floor/contents.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import type { WeighLine, WeighOut, WeighPart } from '../../shared/floor/weigh-out.ts';

/** A line of a weigh-out with where it stands in it. */
export interface PlacedLine {
  readonly line: WeighLine;
  readonly part: WeighPart;
  /** Counted from 1, over all parts. */
  readonly place: number;
  readonly of: number;
}

/** All lines of a weigh-out in the order in which they are weighed: part by part. */
export function allLines({ parts }: WeighOut): readonly PlacedLine[] {
  const lines = parts.flatMap((part) => part.lines.map((line) => ({ line, part })));
  return lines.map((one, index) => ({ ...one, place: index + 1, of: lines.length }));
}

/** What of a line goes into the bowl at the start, in grams: later portions and what is held back stand beside it. */
export function atStartG(line: WeighLine): number {
  // An earlier part is made by itself: all of it goes into its own bowl.
  if (line.portions.length === 0) return line.grams;
  return line.portions.reduce((sum, portion) => sum + (portion.stepId === null && !portion.isHeldBack ? portion.grams : 0), 0);
}

/** The weight to read off the scale now, in grams: what goes in at the start, or, where nothing does, all of what waits beside the bowl. */
export function atHandG(line: WeighLine): number {
  const startG = atStartG(line);
  return startG > 0 ? startG : line.grams;
}

/**
 * What the scale under the bowl shows once a line is in, in grams, where nobody tares in between: what is in of the same
 * part, and the line's own share at the start. Null where the line does not go into the bowl yet.
 */
export function scaleShowsG({ part, line }: Pick<PlacedLine, 'part' | 'line'>): number | null {
  const ownG = atStartG(line);
  if (ownG === 0) return null;
  return part.lines.reduce((sum, other) => (other.id === line.id ? sum : sum + weighedAtStartG(other)), ownG);
}

/** What of a line that is ticked off lies in the bowl since the start, in grams. */
function weighedAtStartG(line: WeighLine): number {
  if (line.weighed === null || line.grams === 0) return 0;
  return line.weighed.grams * (atStartG(line) / line.grams);
}

/** The line to weigh after another, in the order of the list and round to its beginning; null where all that can be is weighed. */
export function nextOpenId(out: WeighOut, afterId: string | null): string | null {
  const lines = allLines(out);
  const from = lines.findIndex(({ line }) => line.id === afterId) + 1;
  const turned = [...lines.slice(from), ...lines.slice(0, from)];
  return turned.find(({ line }) => isOpen(line))?.line.id ?? null;
}

/** Something is still to be done about it with the scale. */
export function isOpen(line: WeighLine): boolean {
  return !line.isIn && line.grams > 0 && (line.weighed === null || line.takeOutG > 0);
}

/** The line at hand: the one that was wanted, else the first that is open, else the first. Null where there are none. */
export function lineAtHand(out: WeighOut, wantedId: string | null): PlacedLine | null {
  const lines = allLines(out);
  const openId = nextOpenId(out, null);
  return lines.find(({ line }) => line.id === wantedId) ?? lines.find(({ line }) => line.id === openId) ?? lines[0] ?? null;
}

/** The line before or after another, `by` lines on; null past either end. */
export function neighbourId(out: WeighOut, lineId: string, by: -1 | 1): string | null {
  const lines = allLines(out);
  const index = lines.findIndex(({ line }) => line.id === lineId);
  return index === -1 ? null : (lines[index + by]?.line.id ?? null);
}

/** What kind of ingredient a line is; null for what is no ingredient. */
export function kindOf(state: FloorState, line: WeighLine): Ingredient['kind'] | null {
  return state.ingredients?.document.find((ingredient) => ingredient.id === line.ingredientId)?.kind ?? null;
}

/** Water comes from the tap and has no lot; what is drawn or made here has its own record. */
export function takesLot(state: FloorState, line: WeighLine): boolean {
  const kind = kindOf(state, line);
  return kind !== null && kind !== 'water';
}

/** The verb of a step of a workpiece's formula; null where the formula has no such step. */
export function verbOf(state: FloorState, workpiece: Workpiece, stepId: string | null): Verb | null {
  return formulaOf(state, workpiece)?.method.find((step) => step.id === stepId)?.verb ?? null;
}

/** How the bowl stands: all of the dough's part, in grams. */
export function doughPart({ parts }: WeighOut): WeighPart | null {
  return parts.find((part) => part.isDough) ?? null;
}
