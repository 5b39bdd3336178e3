import type { BookLookup } from './book-lookup.ts';
import type { Fault } from './kitchen-faults.ts';
import type { SidePrep, Step } from './method.ts';

/** Side preps join at a step that takes them, and wait for steps that come before it. */
export function checkSidePreps(preps: readonly SidePrep[], steps: readonly Step[], path: string, lookup: BookLookup, fault: Fault): void {
  const order = new Map(steps.map((step, index) => [step.id, index]));
  preps.forEach((prep, index) => {
    const at = `${path}[${index}]`;
    const made = lookup.formulas.get(prep.formula);
    if (made === undefined) fault(`${at}.formula`, { code: 'formulaUnknown', id: prep.formula });
    else if (made.kind !== 'prep') fault(`${at}.formula`, { code: 'notAPrep', id: prep.formula, kind: made.kind });
    else if (preps.findIndex((other) => other.formula === prep.formula && other.joins === prep.joins) < index)
      fault(`${at}.formula`, { code: 'idTwice', id: prep.formula });
    checkOrder(prep, at, steps, order, fault);
  });
}

function checkOrder(prep: SidePrep, at: string, steps: readonly Step[], order: ReadonlyMap<string, number>, fault: Fault): void {
  const { formula, joins, notBefore, readyMin, withinMin } = prep;
  const joinsAt = order.get(joins);
  if (joinsAt === undefined) fault(`${at}.joins`, { code: 'stepUnknown', id: joins });
  else if (!(steps[joinsAt]?.additions.some((addition) => addition.formula === formula) ?? false))
    fault(`${at}.joins`, { code: 'notAdded', step: joins, id: formula });
  if (notBefore !== undefined) {
    const waitsAt = order.get(notBefore);
    if (waitsAt === undefined) fault(`${at}.notBefore`, { code: 'stepUnknown', id: notBefore });
    else if (joinsAt !== undefined && waitsAt >= joinsAt) fault(`${at}.notBefore`, { code: 'waitsForLater', step: notBefore, joins });
  }
  if (withinMin !== undefined && readyMin > withinMin) fault(`${at}.readyMin`, { code: 'readyAfterWithin', readyMin, withinMin });
}
