import { checkCuts, checkWeight } from '../../documents/cut-faults.ts';
import type { Formula } from '../../documents/formula.ts';
import type { Mixer } from '../../documents/kitchen.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { newestFormula } from '../contents.ts';
import type { FloorEvent } from '../events.ts';
import { mixersOf } from '../mixers.ts';
import type { Refusal } from '../refusals.ts';
import { versionKey, type FloorState } from '../state.ts';
import type { DayBook, DayPlan } from './day-plan.ts';
import type { Decision } from './decision.ts';
import { unlessFaulty } from './faulty.ts';
import { plannedEvents } from './plan-day.ts';
import { EMPTY_G } from './sources.ts';

/**
 * More batches for a day, by the formulas and products in force: a day that is over takes none, one that is not open yet
 * is opened with them. Nothing is planned that its mixers cannot take.
 */
export function decidePlanBatches(state: FloorState, command: CommandOf<'planBatches'>, context: CommandContext): Decision {
  const { serviceDate, batches } = command;
  if (state.closedDates.includes(serviceDate)) return refused({ code: 'dayNotOpen', serviceDate });
  const right = unlessFaulty((fault) => {
    batches.forEach(({ formulaId, cuts, grams }, index) => {
      checkWeight(grams, EMPTY_G, `batches[${index}].grams`, fault);
      const formula = newestFormula(state)(formulaId);
      if (formula !== null) checkCuts(formula, cuts.length, `batches[${index}].cuts`, fault);
    });
  });
  const book = bookOfHouse(state);
  for (const batch of batches) {
    const formula = book.formulaOf(batch.formulaId);
    if (formula === null) return refused({ code: 'documentMissing', kind: 'formula', id: batch.formulaId });
    const missing = missingIngredient(formula, book);
    if (missing !== undefined) return refused({ code: 'documentMissing', kind: 'ingredient', id: missing });
    const fits = cutsFit(batch, book);
    if (!fits.ok) return fits;
    const isMixed = mixerTakes(state, formula, batch.grams);
    if (!isMixed.ok) return isMixed;
  }
  if (!right.ok) return right;
  const opened: FloorEvent[] = state.openDates.includes(serviceDate) ? [] : [{ type: 'dayOpened', serviceDate }];
  const planned = plannedEvents(state, command, context, book);
  return planned.ok ? accepted([...opened, ...planned.value]) : planned;
}

/** The documents in force; what is out of the way is not planned. */
export function bookOfHouse(state: FloorState): DayBook {
  const { formulaVersions, productVersions, archivedFormulas } = state;
  const find = newestFormula(state);
  return {
    formulaOf: (id) => (archivedFormulas.includes(id) ? null : find(id)),
    productOf: (id) => state.products[versionKey(id, productVersions[id] ?? 0)] ?? null,
    ingredients: state.ingredients?.document ?? [],
    versions: { formulaVersions, productVersions },
  };
}

/** An ingredient that the house's list has not: it came with a file that named it, and another list took its place. */
function missingIngredient(formula: Formula, { ingredients }: DayBook): string | undefined {
  const known = new Set(ingredients.map((ingredient) => ingredient.id));
  return formula.parts
    .flatMap((part) => part.items)
    .flatMap((line) => ('item' in line ? [line.item] : []))
    .find((id) => !known.has(id));
}

function cutsFit({ formulaId, grams, cuts }: DayPlan['batches'][number], book: DayBook): Result<null, Refusal> {
  for (const { productId } of cuts) {
    if (book.productOf(productId)?.formula !== formulaId) return refused({ code: 'productUnknown', productId });
  }
  const neededG = cuts.reduce((sum, cut) => sum + cut.grams, 0);
  return neededG > grams + EMPTY_G ? refused({ code: 'cutsTooHeavy', neededG, hasG: grams }) : accepted(null);
}

/** Each phase of mixing needs one mixer that takes so much and can mix so little. */
function mixerTakes(state: FloorState, formula: Formula, grams: number): Result<null, Refusal> {
  for (const step of formula.method) {
    for (const mixers of mixersOf(state, step)) {
      const [first] = mixers;
      if (first === undefined || mixers.some((mixer) => takes(mixer, grams))) continue;
      const { id, leastG, mostG } = nearest(mixers, grams) ?? first;
      return refused({ code: 'outsideMixer', stepId: step.id, mixerId: id, leastG, mostG });
    }
  }
  return accepted(null);
}

function takes({ leastG, mostG }: Mixer, grams: number): boolean {
  return grams >= leastG - EMPTY_G && grams <= mostG + EMPTY_G;
}

/** The mixer whose load is nearest to it. */
function nearest(mixers: readonly Mixer[], grams: number): Mixer | undefined {
  const away = ({ leastG, mostG }: Mixer): number => Math.max(leastG - grams, grams - mostG);
  return mixers.toSorted((a, b) => away(a) - away(b))[0];
}
