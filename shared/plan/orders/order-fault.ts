/** Why orders cannot be made in this kitchen at all, by name. Weights in grams. */
export type OrderFault = { readonly orderIds: readonly string[]; readonly productId: string } & (
  | { readonly code: 'productUnknown' }
  | { readonly code: 'formulaUnknown'; readonly formulaId: string }
  /** No mixer that will do has the speed, or takes as much as one piece weighs. */
  | { readonly code: 'noMixer'; readonly formulaId: string; readonly mixerIds: readonly string[]; readonly pieceG: number }
  /** It goes into the oven all at once, and no deck that will do takes so many. */
  | {
      readonly code: 'noDeck';
      readonly formulaId: string;
      readonly deckIds: readonly string[];
      readonly pieces: number;
      readonly mostPieces: number;
    }
  | { readonly code: 'tooMany'; readonly formulaId: string; readonly batches: number }
);
