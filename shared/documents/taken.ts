import type { Part } from './formula.ts';
import type { Step } from './method.ts';
import type { BookLookup, KnownFormula } from './book-lookup.ts';
import type { Fault } from './kitchen-faults.ts';

/** Ids of the formulas that the lines of parts take from. */
export function takenByParts(parts: readonly Part[]): readonly string[] {
  return parts.flatMap((part) => part.items).flatMap((line) => ('formula' in line ? [line.formula] : []));
}

/** Ids of the formulas that steps take from. */
export function takenBySteps(steps: readonly Step[]): readonly string[] {
  return steps.flatMap((step) => step.additions).flatMap((addition) => (addition.formula === undefined ? [] : [addition.formula]));
}

/** What is drawn from another formula must be a ferment or a prep, and must not lead back to where it goes in. */
export function checkTaken(id: string, path: string, intoId: string, lookup: BookLookup, fault: Fault): void {
  if (id === intoId) {
    fault(path, { code: 'madeOfItself', id, into: intoId });
    return;
  }
  const taken = lookup.formulas.get(id);
  if (taken === undefined) fault(path, { code: 'formulaUnknown', id });
  else if (taken.kind === 'dough') fault(path, { code: 'takenIsDough', id });
  else if (leadsTo(taken, intoId, lookup, new Set())) fault(path, { code: 'madeOfItself', id, into: intoId });
}

function leadsTo(from: KnownFormula, id: string, lookup: BookLookup, seen: Set<string>): boolean {
  if (from.id === id) return true;
  if (seen.has(from.id)) return false;
  seen.add(from.id);
  return [...takenByParts(from.parts ?? []), ...takenBySteps(from.method ?? [])].some((takenId) => {
    const taken = lookup.formulas.get(takenId);
    return taken !== undefined && leadsTo(taken, id, lookup, seen);
  });
}
