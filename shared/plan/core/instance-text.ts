import { refused } from '../../result.ts';

/** What is wrong with the text of an instance, and in which line, counted from 1. */
export interface InstanceFault {
  readonly line: number;
  readonly message: string;
}

/** Most activities of an instance that is read, the first and the last included. */
export const MOST_ACTIVITIES = 10_000;
/** Most resources of an instance that is read. */
export const MOST_RESOURCES = 200;
/** The most that a duration, a demand or a capacity of an instance that is read may be. */
export const MOST_AMOUNT = 1_000_000;

/** A fault at a line, counted from 1. */
export function faultAt(line: number, message: string): { readonly ok: false; readonly fault: InstanceFault } {
  return refused({ line, message });
}

/** The numbers of a line between its spaces; null where something in it is no whole number. */
export function wholeNumbers(line: string): readonly number[] | null {
  const words = line
    .trim()
    .split(/\s+/u)
    .filter((word) => word !== '');
  return words.every((word) => /^-?\d{1,9}$/u.test(word)) ? words.map(Number) : null;
}
