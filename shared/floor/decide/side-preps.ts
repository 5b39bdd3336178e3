import { additionG, type FormulaOf } from '../../documents/amounts.ts';
import type { Formula, Product } from '../../documents/formula.ts';
import { targetMin, type SidePrep, type Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { EventOf, Serves } from '../events.ts';
import { prepWorkMin } from '../prep-due.ts';
import type { Refusal } from '../refusals.ts';
import { toTenth } from '../tenths.ts';
import { rawG } from '../yields.ts';
import type { DayBook, DayPlan } from './day-plan.ts';

const MINUTE_MS = 60_000;

type Batch = EventOf<'workpiecePlanned'>;

/** A prep that a dough of the day needs. */
export interface PlannedPrep {
  readonly formula: Formula;
  readonly plannedStartMs: number;
  readonly grams: number;
  readonly serves: Serves;
}

/** A step that takes what a side prep makes, with how much and how long after the dough's start by its targets. */
interface Joining {
  readonly prep: SidePrep;
  readonly grams: number;
  readonly afterMin: number;
}

/**
 * The side preps of a day, one for each dough and each prep that it or its products take, the earliest first. A prep of
 * which the day lists a batch itself is made there, for all of them.
 */
export function sidePrepsOf(plan: DayPlan, book: DayBook, batches: readonly Batch[]): Result<readonly PlannedPrep[], Refusal> {
  const find = book.formulaOf;
  const isListed = new Set(plan.batches.map((batch) => batch.formulaId));
  const preps: PlannedPrep[] = [];
  for (const batch of batches.filter((candidate) => candidate.kind === 'batch')) {
    const byFormula = new Map<string, Joining[]>();
    for (const joining of joiningsOf(book, batch, find)) {
      if (isListed.has(joining.prep.formula)) continue;
      byFormula.set(joining.prep.formula, [...(byFormula.get(joining.prep.formula) ?? []), joining]);
    }
    for (const [formulaId, joinings] of byFormula) {
      const formula = find(formulaId);
      if (formula === null) return refused({ code: 'documentMissing', kind: 'formula', id: formulaId });
      const prep = prepFor(batch, formula, joinings);
      if (prep !== null) preps.push(prep);
    }
  }
  return accepted(preps.sort((a, b) => a.plannedStartMs - b.plannedStartMs));
}

/** One prep for all the cuts that take it, ready for the first of them. */
function prepFor(batch: Batch, formula: Formula, joinings: readonly Joining[]): PlannedPrep | null {
  const [first] = [...joinings].sort((a, b) => a.afterMin - b.afterMin);
  const wantedG = toTenth(joinings.reduce((sum, joining) => sum + joining.grams, 0));
  if (first === undefined || wantedG === 0) return null;
  const grams = rawG(formula, wantedG);
  const { joins, readyMin, notBefore, withinMin } = first.prep;
  const startMin = first.afterMin - readyMin - prepWorkMin(formula.method);
  return {
    formula,
    plannedStartMs: Math.max(0, Math.round(batch.plannedStartMs + startMin * MINUTE_MS)),
    grams,
    serves: {
      workpieceId: batch.workpieceId,
      stepId: joins,
      readyMin,
      ...(notBefore === undefined ? {} : { notBeforeStepId: notBefore }),
      ...(withinMin === undefined ? {} : { withinMin }),
    },
  };
}

function joiningsOf(book: DayBook, batch: Batch, find: FormulaOf): readonly Joining[] {
  const formula = find(batch.formulaId);
  if (formula === null) return [];
  const cuts = batch.cuts.flatMap((cut) => {
    const product = book.productOf(cut.productId);
    return product === null ? [] : [{ ...cut, product }];
  });
  const only = cuts.length === 1 ? cuts[0] : undefined;
  const pieces = cuts.reduce((sum, cut) => sum + cut.pieces, 0);
  const amountG = (prep: SidePrep, steps: readonly Step[], grams: number, count: number): number =>
    additionsOf(prep, steps).reduce((sum, addition) => sum + additionG(addition, formula, grams, count, find, book.ingredients).grams, 0);
  const whole = uniquePreps(
    formula,
    cuts.map((cut) => cut.product),
  ).map((prep) => ({
    prep,
    grams: amountG(prep, formula.method, batch.grams, pieces),
    afterMin: minutesUntil(formula.method, prep.joins, only?.pieces ?? null),
  }));
  const methodMin = minutesUntil(formula.method, null, only?.pieces ?? null);
  const byCut = cuts.flatMap((cut) =>
    [...formula.sidePreps, ...cut.product.sidePreps]
      .filter((prep) => cut.product.way.some((step) => step.id === prep.joins))
      .map((prep) => ({
        prep,
        grams: amountG(prep, cut.product.way, cut.grams, cut.pieces),
        afterMin: methodMin + minutesUntil(cut.product.way, prep.joins, cut.pieces),
      })),
  );
  return [...whole, ...byCut];
}

/** Preps that join before the dough is divided: once for the whole of it, whichever of its products say so. */
function uniquePreps(formula: Formula, products: readonly Product[]): readonly SidePrep[] {
  const preps = [...formula.sidePreps, ...products.flatMap((product) => product.sidePreps)].filter((prep) =>
    formula.method.some((step) => step.id === prep.joins),
  );
  return preps.filter((prep, index) => preps.findIndex((other) => other.formula === prep.formula && other.joins === prep.joins) === index);
}

function additionsOf(prep: SidePrep, steps: readonly Step[]): Step['additions'] {
  const step = steps.find((candidate) => candidate.id === prep.joins);
  return step?.additions.filter((addition) => addition.formula === prep.formula) ?? [];
}

/** Minutes from the beginning of a way until a step begins, by targets; the whole way without one. */
function minutesUntil(way: readonly Step[], stepId: string | null, pieces: number | null): number {
  const index = stepId === null ? way.length : way.findIndex((step) => step.id === stepId);
  return way.slice(0, index).reduce((sum, step) => sum + targetMin(step, pieces), 0);
}
