import type { FormulaOf } from '../documents/amounts.ts';
import type { Formula, Ingredient } from '../documents/formula.ts';
import type { Step } from '../documents/method.ts';
import { takenByParts, takenBySteps } from '../documents/taken.ts';
import { overallOf, type Overall } from './overall.ts';

/** Percentages of all flour beyond which a formula was likely mistyped. */
export const UNUSUAL_PCT = {
  /** Most salt. */
  salt: 4,
  /** Most water. */
  hydration: 150,
  /** Least water of a dough. */
  dry: 35,
  /** Most yeast, in whatever form: of dried ones much less is much already. */
  yeast: 10,
} as const;

/** A dough's wanted temperature beyond which it was likely mistyped, in °C. */
export const UNUSUAL_DOUGH_C = { least: 10, most: 38 } as const;

/**
 * What only a mistake leaves in a formula, as far as anybody can tell: it is said and let through. Percentages are on all
 * flour.
 */
export type Remark =
  | { readonly code: 'muchSalt'; readonly pct: number; readonly mostPct: number }
  | { readonly code: 'muchWater'; readonly pct: number; readonly mostPct: number }
  | { readonly code: 'littleWater'; readonly pct: number; readonly leastPct: number }
  | { readonly code: 'muchYeast'; readonly pct: number; readonly mostPct: number }
  | { readonly code: 'doughCold'; readonly celsius: number; readonly leastC: number }
  | { readonly code: 'doughWarm'; readonly celsius: number; readonly mostC: number }
  /** A line without weight. */
  | { readonly code: 'lineOfNothing'; readonly part: string; readonly line: number; readonly partIndex: number }
  /** Of the same ingredient, twice in one part. */
  | { readonly code: 'lineTwice'; readonly ingredientId: string; readonly part: string; readonly partIndex: number }
  /** It is in the parts, and no step of the method says when it goes in: nothing is drawn from the pot for it. */
  | { readonly code: 'neverGoesIn'; readonly formulaId: string }
  /** A dough without any salt. */
  | { readonly code: 'noSalt' };

export type RemarkCode = Remark['code'];

/** The remarks on a formula, the weightiest first. Empty where nothing is unusual, and where it cannot be reckoned. */
export function remarksOf(formula: Formula, formulaOf: FormulaOf, ingredients: readonly Ingredient[]): readonly Remark[] {
  const overall = overallOf(formula, formulaOf, ingredients);
  return [
    ...(overall.ok ? ofTotals(formula, overall.value) : []),
    ...ofTemperature(formula),
    ...neverGoingIn(formula),
    ...ofLines(formula),
  ];
}

function ofTotals({ kind }: Formula, { saltPct, hydrationPct, yeastPct }: Overall): readonly Remark[] {
  const remarks: Remark[] = [];
  const { salt, hydration, dry, yeast } = UNUSUAL_PCT;
  if (saltPct !== null && saltPct > salt) remarks.push({ code: 'muchSalt', pct: saltPct, mostPct: salt });
  // A liquid levain or a scald is wetter than any dough; both are at home in their own kinds.
  if (hydrationPct !== null && kind === 'dough' && hydrationPct > hydration)
    remarks.push({ code: 'muchWater', pct: hydrationPct, mostPct: hydration });
  if (hydrationPct !== null && kind === 'dough' && hydrationPct < dry)
    remarks.push({ code: 'littleWater', pct: hydrationPct, leastPct: dry });
  if (yeastPct !== null && yeastPct > yeast) remarks.push({ code: 'muchYeast', pct: yeastPct, mostPct: yeast });
  if (kind === 'dough' && saltPct === 0) remarks.push({ code: 'noSalt' });
  return remarks;
}

function ofTemperature({ kind, doughC }: Formula): readonly Remark[] {
  if (kind !== 'dough' || doughC === undefined) return [];
  const { least, most } = UNUSUAL_DOUGH_C;
  if (doughC < least) return [{ code: 'doughCold', celsius: doughC, leastC: least }];
  return doughC > most ? [{ code: 'doughWarm', celsius: doughC, mostC: most }] : [];
}

function neverGoingIn(formula: Formula): readonly Remark[] {
  if (formula.kind !== 'dough' || placesNothing(formula.method)) return [];
  const placed = new Set(takenBySteps(formula.method));
  const taken = [...new Set(takenByParts(formula.parts))];
  return taken.filter((id) => !placed.has(id)).map((formulaId): Remark => ({ code: 'neverGoesIn', formulaId }));
}

/** A method without any step that mixes says nothing of when anything goes in. */
function placesNothing(method: readonly Step[]): boolean {
  return !method.some((step) => ['weigh', 'add', 'firstSpeed', 'secondSpeed'].includes(step.verb));
}

function ofLines(formula: Formula): readonly Remark[] {
  return formula.parts.flatMap((part, partIndex) => {
    const empty = part.items.flatMap((line, index): Remark[] =>
      line.g === 0 ? [{ code: 'lineOfNothing', part: part.name, partIndex, line: index }] : [],
    );
    const ids = part.items.flatMap((line) => ('item' in line ? [line.item] : []));
    const twice = [...new Set(ids.filter((id, index) => ids.indexOf(id) < index))];
    return [...empty, ...twice.map((ingredientId): Remark => ({ code: 'lineTwice', ingredientId, part: part.name, partIndex }))];
  });
}
