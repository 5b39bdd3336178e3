import type { Product } from '../../shared/documents/formula.ts';
import { bakedFromPieceG, pieceFromBakedG, type Size, type SizedPieces } from '../../shared/trade/batch-size.ts';

/** What has been said of how much is made. NaN where something else than a number stands in a field. */
export interface SizeChoice {
  readonly mode: Size['kind'];
  readonly doughG: number | undefined;
  readonly flourG: number | undefined;
  /** By product: how many, and of how much dough where that is not the product's own. */
  readonly pieces: Readonly<Record<string, PieceChoice>>;
  readonly mixerId: string | null;
}

export interface PieceChoice {
  readonly pieces?: number | undefined;
  readonly pieceG?: number | undefined;
}

/** Nothing said yet: pieces where the formula has products, else dough. */
export function noSize(products: readonly Product[]): SizeChoice {
  return { mode: products.length > 0 ? 'pieces' : 'dough', doughG: undefined, flourG: undefined, pieces: {}, mixerId: null };
}

/** The size that has been said; null where a number is missing or is none. */
export function sizeOf(choice: SizeChoice, products: readonly Product[]): Size | null {
  switch (choice.mode) {
    case 'dough':
      return isWeight(choice.doughG) ? { kind: 'dough', doughG: choice.doughG } : null;
    case 'flour':
      return isWeight(choice.flourG) ? { kind: 'flour', flourG: choice.flourG } : null;
    case 'pieces': {
      const pieces = products.map((product) => sizedPieces(product, choice.pieces[product.id] ?? {}));
      if (pieces.some((each) => Number.isNaN(each.pieces) || !isWeight(each.pieceG))) return null;
      const some = pieces.filter((each) => each.pieces > 0);
      return some.length === 0 ? null : { kind: 'pieces', pieces: some };
    }
  }
}

/** The choice with a field of it saying something else: `doughG`, `flourG`, `mixerId`, `pieces ID`, `pieceG ID`, `bakedG ID`. */
export function withSaid(choice: SizeChoice, key: string, value: unknown, products: readonly Product[]): SizeChoice {
  const [field = '', id] = key.split(' ');
  const number = typeof value === 'number' ? value : undefined;
  if (id === undefined) return { ...choice, [field]: field === 'mixerId' ? (value === '' ? null : value) : number };
  const said = choice.pieces[id] ?? {};
  const lossPct = products.find((product) => product.id === id)?.bakeLossPct ?? 0;
  const changed =
    field === 'bakedG' ? { pieceG: number === undefined ? undefined : pieceFromBakedG(number, lossPct) } : { [field]: number };
  return { ...choice, pieces: { ...choice.pieces, [id]: { ...said, ...changed } } };
}

/** Dough in one piece of a product as it is chosen, in grams, and what it weighs baked. */
export function pieceWeights(product: Product, said: PieceChoice): { readonly pieceG: number; readonly bakedG: number } {
  const pieceG = said.pieceG ?? product.pieceG;
  return { pieceG, bakedG: bakedFromPieceG(pieceG, product.bakeLossPct) };
}

function sizedPieces(product: Product, said: PieceChoice): SizedPieces {
  return { productId: product.id, pieces: said.pieces ?? 0, pieceG: pieceWeights(product, said).pieceG };
}

function isWeight(value: number | undefined): value is number {
  return value !== undefined && Number.isFinite(value) && value > 0;
}
