import { unreachable } from '../result.ts';

/** Pieces of one product, each of so many grams of dough. */
export interface SizedPieces {
  readonly productId: string;
  readonly pieces: number;
  readonly pieceG: number;
}

/** What a batch is made to: dough in the bowl, all its flour, or pieces of one product or several. Grams. */
export type Size =
  | { readonly kind: 'dough'; readonly doughG: number }
  | { readonly kind: 'flour'; readonly flourG: number }
  | { readonly kind: 'pieces'; readonly pieces: readonly SizedPieces[] };

/** What a mixer takes, in grams of dough. */
export interface MixerLoad {
  readonly leastG: number;
  readonly mostG: number;
}

/** Of a load that is over the most by less than this share, floating point is to blame. */
const TOLERANCE = 1e-9;

/**
 * Dough in the bowl, in grams, for a batch of a size. `sumPct` is dough ÷ all flour ×100 of the formula (null without flour:
 * then nothing can be made to flour, and the answer is 0). The handling loss, per cent of the dough, counts for pieces: what
 * stays on the bench is in no piece.
 */
export function doughForG(size: Size, { sumPct }: { readonly sumPct: number | null }, handlingLossPct = 0): number {
  switch (size.kind) {
    case 'dough':
      return size.doughG;
    case 'flour':
      return (size.flourG * (sumPct ?? 0)) / 100;
    case 'pieces':
      return piecesG(size.pieces) / (1 - handlingLossPct / 100);
    default:
      return unreachable(size);
  }
}

/** What pieces weigh together, in grams of dough, without any loss. */
export function piecesG(pieces: readonly SizedPieces[]): number {
  return pieces.reduce((sum, each) => sum + each.pieces * each.pieceG, 0);
}

/** Dough of a piece, in grams, that weighs `bakedG` when it is baked; the loss is per cent of the dough, below 100. */
export function pieceFromBakedG(bakedG: number, bakeLossPct: number): number {
  return bakedG / (1 - bakeLossPct / 100);
}

/** What a piece of dough weighs when it is baked, in grams. */
export function bakedFromPieceG(pieceG: number, bakeLossPct: number): number {
  return pieceG * (1 - bakeLossPct / 100);
}

/**
 * As few batches as the mixer takes the dough in, all alike. Null where it cannot be: so little that it is below the least, or between
 * the most of one number of batches and the least of the next.
 */
export function splitByMixer(doughG: number, { leastG, mostG }: MixerLoad): { readonly count: number; readonly eachG: number } | null {
  if (!(doughG > 0) || !(mostG > 0)) return null;
  const count = fewest(doughG, mostG);
  const eachG = doughG / count;
  return eachG >= leastG * (1 - TOLERANCE) ? { count, eachG } : null;
}

/**
 * As few batches as the mixer takes the pieces in: pieces stay whole, and every batch gets as nearly as can be the same number of each
 * product and the same weight. Null where no number of batches is within the mixer's load.
 */
export function splitPiecesByMixer(
  pieces: readonly SizedPieces[],
  handlingLossPct: number,
  mixer: MixerLoad,
): readonly (readonly SizedPieces[])[] | null {
  const doughG = doughForG({ kind: 'pieces', pieces }, { sumPct: null }, handlingLossPct);
  const pieceCount = pieces.reduce((sum, each) => sum + each.pieces, 0);
  if (!(doughG > 0) || !(mixer.mostG > 0)) return null;
  // Whole pieces seldom divide exactly, so that the fewest by weight may still leave one batch too heavy.
  for (let count = fewest(doughG, mixer.mostG); count <= pieceCount; count += 1) {
    const batches = dealtOut(pieces, count);
    const weights = batches.map((batch) => doughForG({ kind: 'pieces', pieces: batch }, { sumPct: null }, handlingLossPct));
    if (Math.min(...weights) < mixer.leastG * (1 - TOLERANCE)) return null;
    if (Math.max(...weights) <= mixer.mostG * (1 + TOLERANCE)) return batches;
  }
  return null;
}

function fewest(doughG: number, mostG: number): number {
  return Math.max(1, Math.ceil((doughG / mostG) * (1 - TOLERANCE)));
}

/** Every batch gets its whole share of each product; what is left over goes, piece by piece, to the lightest. */
function dealtOut(pieces: readonly SizedPieces[], count: number): readonly (readonly SizedPieces[])[] {
  const batches = Array.from({ length: count }, () => ({ weightG: 0, pieces: pieces.map((each) => ({ ...each, pieces: 0 })) }));
  const heaviestFirst = [...pieces.keys()].sort((a, b) => (pieces[b]?.pieceG ?? 0) - (pieces[a]?.pieceG ?? 0));
  for (const index of heaviestFirst) {
    const { pieces: wanted, pieceG } = pieces[index] ?? { pieces: 0, pieceG: 0 };
    const shareCount = Math.floor(wanted / count);
    const byWeight = [...batches].sort((a, b) => a.weightG - b.weightG);
    for (const [place, batch] of byWeight.entries()) {
      const got = shareCount + (place < wanted - shareCount * count ? 1 : 0);
      batch.weightG += got * pieceG;
      const own = batch.pieces[index];
      if (own !== undefined) batch.pieces[index] = { ...own, pieces: got };
    }
  }
  return batches.map((batch) => batch.pieces.filter((each) => each.pieces > 0));
}
