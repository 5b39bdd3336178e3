import { z } from 'zod';
import type { House } from '../../shared/documents/house.ts';
import type { PlanFault } from '../../shared/plan/plan-api.ts';
import { loadText } from '../parts/weight-text.ts';
import { PLAN_FAULTS } from '../words/day.ts';

/** Facts that faults may carry; what a fault has not is as if nobody had said it. */
const factsSchema = z.looseObject({
  formulaId: z.string().default(''),
  productId: z.string().nullable().default(null),
  id: z.string().default(''),
  grams: z.number().optional(),
  pieceG: z.number().default(0),
  pieces: z.number().optional(),
  mostPieces: z.number().default(0),
  batches: z.number().default(0),
  needed: z.number().default(0),
  most: z.number().default(0),
  slotsNeeded: z.number().default(0),
  mostSlots: z.number().default(0),
});

/** Names of documents of the book, by their keys. */
export interface BookNames {
  readonly formula: (id: string) => string;
  readonly product: (id: string) => string;
}

/** Why a day cannot be planned, in this page's language; a fault that this page does not know, as the planner wrote it. */
export function planFaultText(fault: PlanFault, names: BookNames, units: House['units']): string {
  const facts = factsSchema.parse(fault);
  const batch = facts.productId === null ? names.formula(facts.formulaId) : names.product(facts.productId);
  switch (fault.code) {
    case 'documentMissing':
      return PLAN_FAULTS.documentMissing(batch, facts.id);
    case 'productUnknown':
      return PLAN_FAULTS.documentMissing(batch, facts.productId ?? '');
    case 'formulaUnknown':
      return PLAN_FAULTS.documentMissing(batch, facts.formulaId);
    case 'noMixer':
      return PLAN_FAULTS.noMixer(batch, loadText(facts.grams ?? facts.pieceG, units));
    case 'noDeck':
      return facts.pieces === undefined
        ? PLAN_FAULTS.noDeck(batch, facts.slotsNeeded, facts.mostSlots)
        : PLAN_FAULTS.noDeckForPieces(batch, facts.pieces, facts.mostPieces);
    case 'tooMany':
      return PLAN_FAULTS.tooMany(batch, facts.batches);
    case 'tooFewVessels':
    case 'tooFewHands':
      return PLAN_FAULTS[fault.code](batch, facts.needed, facts.most);
    case 'orderUnknown':
    case 'noKitchen':
    case 'nothingPlanned':
    case 'givenUp':
    case 'crashed':
      return PLAN_FAULTS[fault.code];
    default:
      return fault.message;
  }
}
