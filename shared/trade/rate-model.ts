import { z } from 'zod';
import { celsiusSchema } from '../documents/names.ts';

/**
 * How fast a dough ripens at a temperature. perKelvin: by `rate` more for each kelvin; q10: `q10` times as fast for ten kelvin; cardinal:
 * growth between a least, a best and a most temperature (CTMI); levain: the curve through the levain's points (`levain-curve.ts`).
 */
export const rateModelSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('perKelvin'), rate: z.number().min(0).max(1) }),
  z.strictObject({ kind: z.literal('q10'), q10: z.number().min(1).max(20) }),
  z.strictObject({ kind: z.literal('cardinal'), minC: celsiusSchema, optC: celsiusSchema, maxC: celsiusSchema }),
  z.strictObject({ kind: z.literal('levain') }),
]);
export type RateModel = z.infer<typeof rateModelSchema>;

/** Least, best and most temperature of growth, in °C. */
export interface Cardinals {
  readonly minC: number;
  readonly optC: number;
  readonly maxC: number;
}

/** Saccharomyces cerevisiae: Salvadó et al. 2011, Appl. Environ. Microbiol. 77:2292; the least temperature from memory. */
export const BAKERS_YEAST_C: Cardinals = { minC: 2.8, optC: 32.3, maxC: 45.4 };

/** A step's ripening, as its document has it: a rate model and the temperature for which the step's minutes are written. */
export type Ripening = { readonly referenceC: number } & (
  | { readonly model: 'perKelvin'; readonly rate: number }
  | { readonly model: 'q10'; readonly q10: number }
  | ({ readonly model: 'cardinal' } & Cardinals)
  | { readonly model: 'levain' }
);

/** The rate model of a step's ripening. */
export function rateModelOf(ripening: Ripening): RateModel {
  switch (ripening.model) {
    case 'perKelvin':
      return { kind: 'perKelvin', rate: ripening.rate };
    case 'q10':
      return { kind: 'q10', q10: ripening.q10 };
    case 'cardinal':
      return { kind: 'cardinal', minC: ripening.minC, optC: ripening.optC, maxC: ripening.maxC };
    case 'levain':
      return { kind: 'levain' };
  }
}

/**
 * Whether three temperatures make a cardinal model: in their order, and the best at least halfway from the least to the most. Below
 * halfway Rosso's equation has a pole within its range.
 */
export function areCardinals({ minC, optC, maxC }: Cardinals): boolean {
  return minC < optC && optC < maxC && optC - minC >= maxC - optC;
}
