import type { FormulaOf } from '../documents/amounts.ts';
import { flourShare, madeG } from '../documents/amounts.ts';
import type { Formula, Ingredient } from '../documents/formula.ts';
import type { Kitchen, Mixer } from '../documents/kitchen.ts';
import { accepted, refused, type Result } from '../result.ts';
import { doughForG, splitByMixer, splitPiecesByMixer, type Size, type SizedPieces } from '../trade/batch-size.ts';

/** One of the batches: dough in its bowl in grams, and what it is cut into where that is known. */
export interface SizedBatch {
  readonly doughG: number;
  readonly pieces: readonly SizedPieces[];
}

/** How much is made in how many batches. */
export interface BatchPlan {
  readonly doughG: number;
  /** Null where the method names no mixer: then one batch takes all. */
  readonly mixer: Mixer | null;
  readonly batches: readonly SizedBatch[];
}

/** Why it cannot be made so; weights in grams. */
export type SizeFault =
  /** The size is nothing. */
  | { readonly code: 'nothing' }
  /** Made to flour, and it has none. */
  | { readonly code: 'noFlour' }
  /** More than a batch of ours can be. */
  | { readonly code: 'tooMuch' }
  /** Less than the mixer's least load. */
  | { readonly code: 'belowLeast'; readonly doughG: number; readonly mixer: Mixer }
  /** Too much for one number of batches and too little for the next; between these weights it cannot be made. */
  /** Whole pieces do not go evenly into batches that the mixer takes. */
  | { readonly code: 'piecesUneven'; readonly doughG: number; readonly mixer: Mixer }
  | { readonly code: 'betweenLoads'; readonly doughG: number; readonly mixer: Mixer; readonly fromG: number; readonly toG: number };

/** Where a formula's shares and mixers are looked up. */
export interface SizeBook {
  readonly formulaOf: FormulaOf;
  readonly ingredients: readonly Ingredient[];
  readonly kitchen: Kitchen;
}

/** A batch weighs at most this, in grams, and no more are planned at once. */
const MOST_DOUGH_G = 10_000_000;
const MOST_BATCHES = 100;

/** Mixers that the method will do with, best first; every mixer where it only asks for one; none where no step needs any. */
export function mixersFor(formula: Formula, kitchen: Kitchen): readonly Mixer[] {
  const claims = formula.method.flatMap((step) => step.claims).filter((claim) => claim.kind === 'mixer');
  if (claims.length === 0) return [];
  const named = claims.flatMap((claim) => claim.ids);
  if (named.length === 0) return kitchen.mixers;
  return [...new Set(named)].flatMap((id) => kitchen.mixers.find((mixer) => mixer.id === id) ?? []);
}

/**
 * A size as batches: one where the mixer takes it, else as few as it takes, evenly. Pieces stay whole. `mixerId` is one of
 * `mixersFor`; without it the mixer that needs the fewest batches, the method's first among those.
 */
export function batchPlan(size: Size, formula: Formula, mixerId: string | null, book: SizeBook): Result<BatchPlan, SizeFault> {
  const share = flourShare(formula, book.formulaOf, book.ingredients);
  if (size.kind === 'flour' && share === 0) return refused({ code: 'noFlour' });
  const doughG = doughForG(size, { sumPct: share === 0 ? null : 100 / share }, formula.handlingLossPct);
  if (!(doughG > 0) || madeG(formula) === 0) return refused({ code: 'nothing' });
  if (doughG > MOST_DOUGH_G * MOST_BATCHES) return refused({ code: 'tooMuch' });
  const mixers = mixersFor(formula, book.kitchen);
  const chosen = mixerId === null ? mixers : mixers.filter(({ id }) => id === mixerId);
  const plans = chosen.map((mixer) => withMixer(size, doughG, mixer, formula.handlingLossPct ?? 0));
  const plan = fewestBatches(plans) ?? plans[0] ?? inOne(size, doughG);
  if (!plan.ok) return plan;
  const isTooMuch = plan.value.batches.length > MOST_BATCHES || plan.value.batches.some((batch) => batch.doughG > MOST_DOUGH_G);
  return isTooMuch ? refused({ code: 'tooMuch' }) : plan;
}

function fewestBatches(plans: readonly Result<BatchPlan, SizeFault>[]): Result<BatchPlan, SizeFault> | undefined {
  const count = (plan: Result<BatchPlan, SizeFault>): number => (plan.ok ? plan.value.batches.length : Infinity);
  return plans
    .filter(({ ok }) => ok)
    .reduce<Result<BatchPlan, SizeFault> | undefined>(
      (best, plan) => (best !== undefined && count(best) <= count(plan) ? best : plan),
      undefined,
    );
}

function inOne(size: Size, doughG: number): Result<BatchPlan, SizeFault> {
  return accepted({
    doughG,
    mixer: null,
    batches: [{ doughG, pieces: size.kind === 'pieces' ? size.pieces.filter(({ pieces }) => pieces > 0) : [] }],
  });
}

function withMixer(size: Size, doughG: number, mixer: Mixer, handlingLossPct: number): Result<BatchPlan, SizeFault> {
  if (doughG > mixer.mostG * MOST_BATCHES) return refused({ code: 'tooMuch' });
  const batches = size.kind === 'pieces' ? piecesSplit(size.pieces, mixer, handlingLossPct) : doughSplit(doughG, mixer);
  return batches === null ? refused(cannotBe(doughG, mixer)) : accepted({ doughG, mixer, batches });
}

function doughSplit(doughG: number, mixer: Mixer): readonly SizedBatch[] | null {
  const split = splitByMixer(doughG, mixer);
  return split === null ? null : Array.from({ length: split.count }, () => ({ doughG: split.eachG, pieces: [] }));
}

function piecesSplit(pieces: readonly SizedPieces[], mixer: Mixer, handlingLossPct: number): readonly SizedBatch[] | null {
  const split = splitPiecesByMixer(pieces, handlingLossPct, mixer);
  return (
    split?.map((own) => ({ doughG: doughForG({ kind: 'pieces', pieces: own }, { sumPct: null }, handlingLossPct), pieces: own })) ?? null
  );
}

function cannotBe(doughG: number, mixer: Mixer): SizeFault {
  if (doughG < mixer.leastG) return { code: 'belowLeast', doughG, mixer };
  const fewer = Math.max(1, Math.floor(doughG / mixer.mostG));
  const fromG = fewer * mixer.mostG;
  const toG = (fewer + 1) * mixer.leastG;
  return doughG > fromG && doughG < toG ? { code: 'betweenLoads', doughG, mixer, fromG, toG } : { code: 'piecesUneven', doughG, mixer };
}
