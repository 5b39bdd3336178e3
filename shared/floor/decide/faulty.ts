import { faultAt, type Fault, type FileFault } from '../../documents/kitchen-faults.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { Refusal } from '../refusals.ts';

/** Faults that one refusal tells: nobody mends more at once, and the answer has to fit into a message. */
export const MOST_FAULTS = 50;

/** The refusal of a document that is not right; nothing where no fault was found. */
export function unlessFaulty(look: (fault: Fault) => void): Result<null, Refusal> {
  const faults: FileFault[] = [];
  look((path, what) => {
    faults.push(faultAt(path, what));
  });
  return faults.length === 0 ? accepted(null) : refused({ code: 'documentFaulty', faults: faults.slice(0, MOST_FAULTS) });
}
