import { faultMessage, type FaultFacts } from '../../../shared/documents/fault-facts.ts';

/** What is wrong with a kitchen, a house or the book, for the one who edits it: as files are told. */
export function faultWords(facts: FaultFacts): string {
  return faultMessage(facts);
}
