import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import { faultWords } from '../words/faults.ts';

/** A fault as the page says it. One without facts was put into the page's words when it was found. */
export function faultText(fault: FileFault): string {
  return fault.facts === undefined ? fault.message : faultWords(fault.facts);
}
