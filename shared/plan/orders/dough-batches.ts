import type { Formula } from '../../documents/formula.ts';
import type { Kitchen, Mixer } from '../../documents/kitchen.ts';
import { batchPlan, mixersFor, type SizeBook, type SizedBatch } from '../../book/batch-plan.ts';
import { accepted, refused, type Result } from '../../result.ts';
import { doughForG, splitPiecesByMixer, type SizedPieces } from '../../trade/batch-size.ts';

/** A mixer's least load is filled up: then a batch weighs more than its pieces. */
export interface DoughBatch {
  readonly grams: number;
  readonly pieces: readonly SizedPieces[];
}

/** More batches than anybody mixes of one dough for one time. */
const MOST_BATCHES = 100;

/**
 * Pieces of one dough as batches: as few as the mixers take, evenly, and no fewer than `leastCount`. Too little for the
 * least load of any, it is made up to it, with the mixer that has to be filled up least. Refused where no mixer has the
 * speeds, or one piece is too heavy.
 */
export function doughBatches(
  pieces: readonly SizedPieces[],
  formula: Formula,
  book: SizeBook,
  leastCount = 1,
): Result<readonly DoughBatch[], 'noMixer' | 'tooMuch'> {
  const able = { ...book, kitchen: fastEnough(formula, book.kitchen) };
  let batches = batchesIn(pieces, formula, able);
  const doughG = doughForG({ kind: 'pieces', pieces }, { sumPct: null }, formula.handlingLossPct ?? 0);
  // Pieces stay whole: one batch is heavier than another by up to one of them.
  const heaviestG = Math.max(0, ...pieces.map(({ pieceG }) => pieceG));
  for (let count = leastCount; batches.ok && batches.value.length < leastCount && count <= MOST_BATCHES; count += 1)
    batches = batchesIn(pieces, formula, { ...able, kitchen: upTo(doughG / count + heaviestG, able.kitchen) });
  return batches;
}

/** The kitchen with mixers that are filled no further than so many grams, or their least. */
function upTo(grams: number, kitchen: Kitchen): Kitchen {
  const mixers = kitchen.mixers.map((mixer) => ({ ...mixer, mostG: Math.max(mixer.leastG, Math.min(mixer.mostG, grams)) }));
  return { ...kitchen, mixers };
}

function batchesIn(pieces: readonly SizedPieces[], formula: Formula, able: SizeBook): Result<readonly DoughBatch[], 'noMixer' | 'tooMuch'> {
  const wantsMixer = formula.method.some((step) => step.claims.some((claim) => claim.kind === 'mixer'));
  const mixers = mixersFor(formula, able.kitchen);
  if (wantsMixer && mixers.length === 0) return refused('noMixer');
  const plan = batchPlan({ kind: 'pieces', pieces }, formula, null, able);
  if (plan.ok) return accepted(plan.value.batches.map(asBatch));
  if (plan.fault.code === 'tooMuch') return refused('tooMuch');
  const filled = mixers.flatMap((mixer) => filledUp(pieces, formula, mixer));
  const [least] = filled.sort((a, b) => weightOf(a) - weightOf(b) || a.length - b.length);
  return least === undefined ? refused('noMixer') : accepted(least);
}

/** The kitchen with those of its mixers only that have the speeds of a method. */
function fastEnough(formula: Formula, kitchen: Kitchen): Kitchen {
  const speeds = formula.method.some((step) => step.verb === 'secondSpeed') ? 2 : 1;
  return { ...kitchen, mixers: kitchen.mixers.filter((mixer) => (mixer.speeds ?? speeds) >= speeds) };
}

function filledUp(
  pieces: readonly SizedPieces[],
  { handlingLossPct }: Formula,
  { leastG, mostG }: Mixer,
): readonly (readonly DoughBatch[])[] {
  const loss = handlingLossPct ?? 0;
  const split = splitPiecesByMixer(pieces, loss, { leastG: 0, mostG });
  if (split === null) return [];
  return [
    split.map((own) => ({
      grams: upToTenth(Math.max(leastG, doughForG({ kind: 'pieces', pieces: own }, { sumPct: null }, loss))),
      pieces: own,
    })),
  ];
}

function asBatch({ doughG, pieces }: SizedBatch): DoughBatch {
  return { grams: upToTenth(doughG), pieces };
}

function weightOf(batches: readonly DoughBatch[]): number {
  return batches.reduce((sum, { grams }) => sum + grams, 0);
}

/** Grams as a scale shows them, never less than is needed. */
export function upToTenth(grams: number): number {
  return Math.ceil(grams * 10 - 1e-6) / 10;
}
