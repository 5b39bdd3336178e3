import type { BatchPlan, SizeFault } from '../../shared/book/batch-plan.ts';
import { unreachable } from '../../shared/result.ts';
import type { Units } from '../desk/field.ts';
import { loadText, weightText } from '../parts/weight-text.ts';
import { SIZE } from '../words/book.ts';

/** Why a size cannot be made, in words. */
export function sizeFaultWords(fault: SizeFault, units: Units): string {
  switch (fault.code) {
    case 'nothing':
      return SIZE.none;
    case 'noFlour':
      return SIZE.noFlour;
    case 'tooMuch':
      return SIZE.tooMuch;
    case 'belowLeast':
      return SIZE.belowLeast(weightText(fault.doughG, units), fault.mixer.name, loadText(fault.mixer.leastG, units));
    case 'betweenLoads':
      return SIZE.betweenLoads(fault.mixer.name, loadText(fault.fromG, units), loadText(fault.toG, units));
    case 'piecesUneven':
      return SIZE.piecesUneven(fault.mixer.name);
    default:
      return unreachable(fault);
  }
}

/** What is made: how many batches of what, in which mixer. */
export function planWords({ doughG, mixer, batches }: BatchPlan, units: Units): string {
  const [first] = batches;
  const lightest = Math.min(...batches.map((batch) => batch.doughG));
  const heaviest = Math.max(...batches.map((batch) => batch.doughG));
  const each =
    heaviest - lightest < 1 ? weightText(first?.doughG ?? 0, units) : `${weightText(lightest, units)} – ${weightText(heaviest, units)}`;
  const made =
    batches.length === 1 ? SIZE.oneBatch(each) : `${SIZE.batches(batches.length, each)}, ${SIZE.inAll(weightText(doughG, units))}`;
  return mixer === null ? made : `${made}, ${SIZE.inMixer(mixer.name)}`;
}
