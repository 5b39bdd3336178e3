import { GAPS, type Gap } from './ring-geometry.ts';

/** How many rings stand in the line. */
export const RING_COUNT = 8;
/** So many may be wrong: a slip of the tongue is no bad eye. Guessing gets that far once in 2600 tries. Our own measure. */
const MOST_WRONG = 1;

/** Gaps for a new line from random bytes, one for each ring; none like the two before it, so that no run tires the eye. */
export function gapsFrom(bytes: Uint8Array): readonly Gap[] {
  const gaps: Gap[] = [];
  for (let index = 0; index < RING_COUNT; index += 1) {
    const [before, last] = gaps.slice(-2);
    const allowed = before !== undefined && before === last ? GAPS.filter((gap) => gap !== last) : GAPS;
    gaps.push(allowed[(bytes[index] ?? 0) % allowed.length] ?? 'up');
  }
  return gaps;
}

/** How a line was read once every ring has an answer; null before. */
export function scoreOf(gaps: readonly Gap[], answers: readonly Gap[]): { readonly right: number; readonly passed: boolean } | null {
  if (answers.length < gaps.length) return null;
  const right = gaps.filter((gap, index) => answers[index] === gap).length;
  return { right, passed: right >= gaps.length - MOST_WRONG };
}
