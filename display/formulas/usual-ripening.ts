import type { Step } from '../../shared/documents/method.ts';
import { unreachable } from '../../shared/result.ts';
import { BAKERS_YEAST_C } from '../../shared/trade/rate-model.ts';

export type Ripening = NonNullable<Step['ripening']>;

/** The room for which a method's times are usually written, in °C. Common practice. */
const USUAL_REFERENCE_C = 26;

/** +10 % for each kelvin between 18 and 32 °C: *bake* magazine, as the design's `trade.md` cites it. */
const RATE = 0.1;
/** Between 15 and 28 °C: Gause 1932, Q. Rev. Biol. 7:27. */
const Q10 = 2.2;

/** A model of ripening to begin from, to be put right by what is seen in the house; the reference of the one before stays. */
export function ripeningOf(model: Ripening['model'], before: Ripening | null): Ripening {
  const referenceC = before?.referenceC ?? USUAL_REFERENCE_C;
  switch (model) {
    case 'perKelvin':
      return { model, referenceC, rate: RATE };
    case 'q10':
      return { model, referenceC, q10: Q10 };
    case 'cardinal':
      return { model, referenceC, ...BAKERS_YEAST_C };
    case 'levain':
      return { model, referenceC };
    default:
      return unreachable(model);
  }
}
