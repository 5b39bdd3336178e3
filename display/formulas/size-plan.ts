import type { BatchPlan } from '../../shared/book/batch-plan.ts';
import type { Formula, Product } from '../../shared/documents/formula.ts';
import type { Step } from '../../shared/documents/method.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';

/** When batches are to be made: the service date, the first one's start, and how long after each the next one starts. */
export interface PlanTimes {
  readonly serviceDate: string;
  readonly firstMs: number;
  readonly everyMin: number;
}

/** Weights are planned to a tenth of a gram; a dough is never planned lighter than what is cut from it. */
const TENTHS = 10;
const LEAST_EVERY_MIN = 5;

/** The command that puts batches on a day's list. Without pieces of its own a batch is cut into as many of `product` as it makes. */
export function planCommand(
  plan: BatchPlan,
  formula: Formula,
  product: Product | null,
  { serviceDate, firstMs, everyMin }: PlanTimes,
): CommandOf<'planBatches'> {
  const lossShare = 1 - (formula.handlingLossPct ?? 0) / 100;
  const batches = plan.batches.map(({ doughG, pieces }, index) => {
    const whole = product === null ? 0 : Math.floor((doughG * lossShare) / product.pieceG + 1e-9);
    const all =
      pieces.length > 0 || product === null || whole === 0 ? pieces : [{ productId: product.id, pieces: whole, pieceG: product.pieceG }];
    const cuts = all.map((each) => ({ productId: each.productId, pieces: each.pieces, grams: downToTenth(each.pieces * each.pieceG) }));
    return { formulaId: formula.id, plannedStartMs: Math.round(firstMs + index * everyMin * 60_000), grams: upToTenth(doughG), cuts };
  });
  return { type: 'planBatches', serviceDate, batches };
}

/** How long a method keeps its mixer, in minutes: from the first step that takes one to the last. */
export function mixerMin(method: readonly Step[]): number {
  const takes = method.map((step) => step.claims.some(({ kind }) => kind === 'mixer'));
  const from = takes.indexOf(true);
  const held = from < 0 ? [] : method.slice(from, takes.lastIndexOf(true) + 1);
  const minutes = held.reduce((sum, step) => sum + step.minutes.target, 0);
  return Math.max(LEAST_EVERY_MIN, Math.ceil(minutes / LEAST_EVERY_MIN) * LEAST_EVERY_MIN);
}

function upToTenth(g: number): number {
  return Math.ceil(g * TENTHS - 1e-6) / TENTHS;
}

function downToTenth(g: number): number {
  return Math.floor(g * TENTHS + 1e-6) / TENTHS;
}
