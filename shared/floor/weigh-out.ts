import type { Formula, Ingredient, Part, PartItem } from '../documents/formula.ts';
import { unreachable } from '../result.ts';
import { roundedLines, roundedTo, scaleFor, type Scales } from '../trade/rounding.ts';
import { formulaOf, newestFormula } from './contents.ts';
import { portionsOf, type GoesIn } from './goes-in.ts';
import { isMixingBegun } from './mixing-begun.ts';
import type { FloorState, Weighed, Workpiece } from './state.ts';
import { neededLinesG, type LinesG } from './weigh-amounts.ts';

/** Scales of a house that has not said which it uses, in grams a division. */
const USUAL_SCALES_G = { bench: 5, fine: 0.1 } as const;

/** What is weighed out for one dough, prep or feed. */
export interface WeighOut {
  /** In the order in which they are made; the last one is what the formula makes. */
  readonly parts: readonly WeighPart[];
  /** The mixing has begun: what goes in at the start is in. */
  readonly isMixed: boolean;
}

export interface WeighPart {
  readonly name: string;
  readonly isDough: boolean;
  readonly lines: readonly WeighLine[];
  /** Sum of the lines as they are shown, in grams. */
  readonly totalG: number;
  /** What of this part is in the bowl, in grams. */
  readonly inBowlG: number;
}

export interface WeighLine {
  /** Index of the part, a hyphen, index of the line in it. */
  readonly id: string;
  readonly kind: 'ingredient' | 'part' | 'formula' | 'seed';
  readonly ingredientId: string | null;
  /** For a line that is drawn from what another formula makes. */
  readonly formulaId: string | null;
  readonly name: string;
  /** Rounded to the division of the scale that will be used. */
  readonly grams: number;
  readonly divisionG: number;
  /** What of it is kept back at first, in grams. */
  readonly heldBackG: number;
  /** The step at which the first of it goes in; null where that is at the start. */
  readonly stepId: string | null;
  /** All its portions, in the order of the method; one at the start for most lines. */
  readonly portions: readonly GoesIn[];
  readonly weighed: Weighed | null;
  /** More of it is in the bowl than belongs there now, by so many grams. */
  readonly takeOutG: number;
  /** The last of it is in: it can no longer be weighed otherwise. */
  readonly isIn: boolean;
  /** Lot numbers that were used of it, the last used first. */
  readonly lots: readonly string[];
}

/**
 * The weigh-out of a workpiece from the formula's version that it began with, scaled to its weight and rounded to the
 * house's scales. Null for pieces and where the formula makes nothing.
 */
export function weighOutOf(state: FloorState, workpiece: Workpiece): WeighOut | null {
  const formula = formulaOf(state, workpiece);
  const neededG = neededLinesG(state, workpiece);
  if (formula === null || neededG === null) return null;
  const isMixed = isMixingBegun(formula, workpiece);
  const whole: Whole = {
    state,
    workpiece,
    formula,
    neededG,
    isMixed,
    portions: portionsOf(state, workpiece, formula, neededG.at(-1) ?? []),
  };
  return { parts: formula.parts.map((part, index) => partOf(whole, part, index)), isMixed };
}

/** A line of a weigh-out by its id, or null. */
export function lineOf(weighOut: WeighOut, lineId: string): WeighLine | null {
  return weighOut.parts.flatMap((part) => part.lines).find((line) => line.id === lineId) ?? null;
}

/** Divisions of the house's scales, in grams. */
export function scalesOf(state: FloorState): Scales {
  return state.house?.document.scalesG ?? USUAL_SCALES_G;
}

/** What every line is worked out from. */
interface Whole {
  readonly state: FloorState;
  readonly workpiece: Workpiece;
  readonly formula: Formula;
  readonly neededG: LinesG;
  readonly isMixed: boolean;
  readonly portions: readonly (readonly GoesIn[])[];
}

function partOf(whole: Whole, part: Part, partIndex: number): WeighPart {
  const scales = scalesOf(whole.state);
  const exactG = whole.neededG[partIndex] ?? [];
  const rounded = roundedLines(
    part.items.map((line, index) => ({ g: exactG[index] ?? 0, kind: ingredientOf(whole.state, line)?.kind ?? 'other' })),
    scales,
  );
  const lines = part.items.map((item, index) =>
    lineAt(whole, item, partIndex, index, rounded[index] ?? { g: exactG[index] ?? 0, divisionG: scaleFor(exactG[index] ?? 0, scales) }),
  );
  return {
    name: part.name,
    isDough: partIndex === whole.formula.parts.length - 1,
    lines,
    totalG: exactSum(lines.map((line) => line.grams)),
    inBowlG: exactSum(lines.map((line) => line.weighed?.grams ?? 0)),
  };
}

function lineAt(
  whole: Whole,
  item: PartItem,
  partIndex: number,
  index: number,
  { g: grams, divisionG }: { readonly g: number; readonly divisionG: number },
): WeighLine {
  const { state, workpiece, formula } = whole;
  const id = `${partIndex}-${index}`;
  const isDough = partIndex === formula.parts.length - 1;
  const exact = isDough ? (whole.portions[index] ?? []) : [];
  const portions = roundedPortions(exact, grams, divisionG);
  const ingredient = ingredientOf(state, item);
  const weighed = workpiece.weighed[id] ?? null;
  const overG = weighed === null ? 0 : weighed.grams - grams;
  return {
    id,
    ...namesOf(state, formula, item, ingredient),
    grams,
    divisionG,
    heldBackG: exactSum(portions.map((portion) => (portion.isHeldBack ? portion.grams : 0))),
    stepId: portions[0]?.stepId ?? null,
    portions,
    weighed,
    // A division more is what the scale cannot tell.
    takeOutG: overG > divisionG * 1.001 ? exactSum([overG]) : 0,
    isIn: isDough ? isPortionIn(whole, portions) : isPartIn(whole, formula.parts[partIndex]?.name ?? ''),
    lots: ingredient === null ? [] : (state.lotsUsed[ingredient.id] ?? []),
  };
}

/** All portions but the last on the scale's divisions; the last has what is left. */
function roundedPortions(exact: readonly GoesIn[], grams: number, divisionG: number): readonly GoesIn[] {
  let leftG = grams;
  return exact.map((portion, index) => {
    const g = index === exact.length - 1 ? leftG : Math.min(leftG, roundedTo(portion.grams, divisionG));
    leftG = exactSum([leftG, -g]);
    return { ...portion, grams: g };
  });
}

function ingredientOf(state: FloorState, item: PartItem): Ingredient | null {
  if (!('item' in item)) return null;
  return state.ingredients?.document.find((ingredient) => ingredient.id === item.item) ?? null;
}

function namesOf(
  state: FloorState,
  formula: Formula,
  item: PartItem,
  ingredient: Ingredient | null,
): Pick<WeighLine, 'kind' | 'ingredientId' | 'formulaId' | 'name'> {
  if ('item' in item) return { kind: 'ingredient', ingredientId: item.item, formulaId: null, name: ingredient?.name ?? item.item };
  if ('part' in item) return { kind: 'part', ingredientId: null, formulaId: null, name: item.part };
  if ('formula' in item) {
    const name = newestFormula(state)(item.formula)?.name ?? item.formula;
    return { kind: 'formula', ingredientId: null, formulaId: item.formula, name };
  }
  if ('seed' in item) return { kind: 'seed', ingredientId: null, formulaId: null, name: formula.name };
  return unreachable(item);
}

/** Whether the last of what is not kept back has gone in. */
function isPortionIn({ workpiece, isMixed }: Whole, portions: readonly GoesIn[]): boolean {
  const last = portions.findLast((portion) => !portion.isHeldBack)?.stepId ?? null;
  if (last === null) return isMixed;
  const life = workpiece.steps[last];
  return life?.status === 'done' || life?.status === 'skipped';
}

/** An earlier part is in once every line of the dough that takes of it is. */
function isPartIn(whole: Whole, partName: string): boolean {
  const { formula } = whole;
  const takers = formula.parts.flatMap((part, partIndex) =>
    part.items.flatMap((line, index) => ('part' in line && line.part === partName ? [{ part, partIndex, index }] : [])),
  );
  return takers.every(({ part, partIndex, index }) =>
    partIndex === formula.parts.length - 1 ? isPortionIn(whole, whole.portions[index] ?? []) : isPartIn(whole, part.name),
  );
}

/** A sum of weights to the millionth of a gram: tenths that are doubles do not add up exactly. */
function exactSum(grams: readonly number[]): number {
  return Math.round(grams.reduce((sum, g) => sum + g, 0) * 1e6) / 1e6;
}
